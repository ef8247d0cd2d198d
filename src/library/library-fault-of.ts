import { LibraryFault } from './library-fault.ts';

const noRoom = ['SQLITE_FULL', 'SQLITE_IOERR_SHMSIZE', 'ENOSPC', 'EDQUOT', 'EFBIG'];
const readOnly = ['SQLITE_READONLY', 'EROFS', 'EACCES', 'EPERM'];
const busy = ['SQLITE_BUSY', 'SQLITE_LOCKED'];
const damaged = ['SQLITE_CORRUPT'];
const notAFolder = ['ENOTDIR', 'EEXIST'];
const foreign = ['SQLITE_NOTADB'];
const diskFailed = ['SQLITE_IOERR', 'EIO'];

/**
 * What SQLite (https://sqlite.org/rescode.html) or the system says of a library's files, as a `LibraryFault`; anything
 * else stays as it is. A code of SQLite stands for its extended ones too.
 *
 * @example libraryFaultOf(Object.assign(new Error('…'), { code: 'SQLITE_FULL' }), 'my-takes').code // 'no-room'
 */
export function libraryFaultOf(error: unknown, path: string): unknown {
  if (error instanceof LibraryFault) return error;
  const { code = '', message: reason } = error as { code?: string; message: string };
  const is = (codes: readonly string[]) => codes.some((one) => code === one || code.startsWith(`${one}_`));
  if (is(noRoom)) return new LibraryFault('no-room', { path });
  if (is(readOnly)) return new LibraryFault('library-read-only', { path });
  if (is(busy)) return new LibraryFault('library-busy');
  if (is(damaged)) return new LibraryFault('library-damaged', { path, reason });
  if (is(notAFolder))
    return new LibraryFault('not-a-library', { path, reason: 'it is a file, not a folder' });
  if (is(foreign)) return new LibraryFault('not-a-library', { path, reason });
  if (is(diskFailed)) return new LibraryFault('disk-failed', { path, reason });
  return error;
}
