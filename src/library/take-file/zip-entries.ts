import { TakeFileError } from './take-file-fault.ts';
import { takeFileLimits } from './take-file-limits.ts';

/** One file of an archive as its directory describes it. */
export interface ZipEntry {
  readonly name: string;
  readonly method: number;
  readonly crc: number;
  /** Where its packed bytes begin and end. */
  readonly from: number;
  readonly to: number;
  /** Bytes unpacked, as claimed. */
  readonly size: number;
}

const signatures = { file: 0x04034b50, directory: 0x02014b50, end: 0x06054b50 };
const endBytes = 22;
const directoryBytes = 46;
const fileBytes = 30;
const longestComment = 0xffff;
const stored = 0;
const deflated = 8;

/**
 * The files of a ZIP archive (PKWARE, APPNOTE.TXT 6.3), read from its directory; folders are left out. Throws
 * `TakeFileError` for an archive that is damaged, locked or beyond the limits, whose files lie over each other, or
 * that has a name twice or one that could lead out of a folder.
 *
 * @example zipEntries(bytes).get('manifest.json') // { name: 'manifest.json', method: 8, … }
 */
export function zipEntries(bytes: Uint8Array): ReadonlyMap<string, ZipEntry> {
  if (bytes.length > takeFileLimits.archiveBytes)
    throw new TakeFileError('archive-too-large', { bytes: bytes.length, limit: takeFileLimits.archiveBytes });
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const { count, at, end } = findDirectory(view);
  const found: ZipEntry[] = [];
  const names = new Set<string>();
  let next = at;
  for (let index = 0; index < count; index++) {
    const { entry, after } = readEntry(view, next, end);
    next = after;
    if (names.has(comparable(entry.name))) throw new TakeFileError('name-twice', { name: entry.name });
    names.add(comparable(entry.name));
    found.push({ ...entry, ...dataOf(view, entry, at) });
  }
  if (next !== end) throw new TakeFileError('archive-damaged');
  checkApart(found);
  const files = found.filter(({ name }) => !name.endsWith('/'));
  const unpacked = files.reduce((sum, { size }) => sum + size, 0);
  if (unpacked > takeFileLimits.unpackedBytes)
    throw new TakeFileError('archive-too-large', { bytes: unpacked, limit: takeFileLimits.unpackedBytes });
  return new Map(files.map((entry) => [entry.name, entry]));
}

function findDirectory(view: DataView): { count: number; at: number; end: number } {
  const last = view.byteLength - endBytes;
  for (let end = last; end >= Math.max(0, last - longestComment); end--) {
    if (view.getUint32(end, true) !== signatures.end) continue;
    if (end + endBytes + view.getUint16(end + 20, true) !== view.byteLength) continue;
    const count = view.getUint16(end + 10, true);
    const size = view.getUint32(end + 12, true);
    const at = view.getUint32(end + 16, true);
    const oneDisk = view.getUint32(end + 4, true) === 0 && view.getUint16(end + 8, true) === count;
    if (!oneDisk || at + size !== end) throw new TakeFileError('archive-damaged');
    if (count > takeFileLimits.files)
      throw new TakeFileError('too-many-files', { files: count, limit: takeFileLimits.files });
    return { count, at, end };
  }
  throw new TakeFileError('not-a-zip');
}

type Described = Omit<ZipEntry, 'from' | 'to'> & { readonly packed: number; readonly header: number };

function readEntry(view: DataView, at: number, end: number): { entry: Described; after: number } {
  if (at + directoryBytes > end || view.getUint32(at, true) !== signatures.directory)
    throw new TakeFileError('archive-damaged');
  const flags = view.getUint16(at + 8, true);
  const nameBytes = view.getUint16(at + 28, true);
  const after =
    at + directoryBytes + nameBytes + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  if (after > end) throw new TakeFileError('archive-damaged');
  if ((flags & 1) !== 0) throw new TakeFileError('locked');
  const name = text(view, at + directoryBytes, nameBytes);
  if (!isSafe(name)) throw new TakeFileError('unsafe-name', { name });
  const method = view.getUint16(at + 10, true);
  if (method !== stored && method !== deflated) throw new TakeFileError('packed-unusually', { method });
  const entry = {
    name,
    method,
    crc: view.getUint32(at + 16, true),
    packed: view.getUint32(at + 20, true),
    size: view.getUint32(at + 24, true),
    header: view.getUint32(at + 42, true),
  };
  if (method === stored && entry.packed !== entry.size) throw new TakeFileError('archive-damaged');
  return { entry, after };
}

/** Where a file's packed bytes lie: behind its own header, before the directory. */
function dataOf(view: DataView, { header, packed }: Described, directory: number) {
  if (header + fileBytes > directory || view.getUint32(header, true) !== signatures.file)
    throw new TakeFileError('archive-damaged');
  const from = header + fileBytes + view.getUint16(header + 26, true) + view.getUint16(header + 28, true);
  if (from + packed > directory) throw new TakeFileError('archive-damaged');
  return { from, to: from + packed };
}

/** Files that share bytes are a way to make a small archive unpack to a huge one. */
function checkApart(entries: readonly ZipEntry[]): void {
  const inOrder = [...entries].sort((a, b) => a.from - b.from);
  inOrder.slice(1).forEach((entry, index) => {
    if (entry.from < inOrder[index]!.to + fileBytes) throw new TakeFileError('archive-damaged');
  });
}

function text(view: DataView, at: number, length: number): string {
  return new TextDecoder().decode(new Uint8Array(view.buffer, view.byteOffset + at, length));
}

const comparable = (name: string): string => name.normalize('NFC').toLowerCase();

function isSafe(name: string): boolean {
  const parts = name.replace(/\/$/, '').split('/');
  return (
    name.length <= takeFileLimits.nameCharacters &&
    !/[\\:\p{Cc}]/u.test(name) &&
    parts.every((part) => part !== '' && part !== '.' && part !== '..')
  );
}
