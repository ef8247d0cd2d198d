import { Inflate } from 'fflate';
import { crc32 } from '../../formats/crc32.ts';
import { TakeFileError } from './take-file-fault.ts';
import type { ZipEntry } from './zip-entries.ts';

/** Packed bytes taken at a time, so that what they unpack to stays bounded before it is counted. */
const atOnce = 16 * 1024;

/**
 * A file's unpacked bytes; stored ones are a view of the archive. Throws `TakeFileError` for more than `limit` bytes
 * and for bytes that are damaged or more or fewer than the archive's directory says.
 */
export function unpackEntry(archive: Uint8Array, entry: ZipEntry, limit: number): Uint8Array {
  const { name, method, from, to, size, crc } = entry;
  if (size > limit) throw new TakeFileError('file-too-large', { name, bytes: size, limit });
  const packed = archive.subarray(from, to);
  const bytes = method === 0 ? packed : inflate(packed, entry);
  if (bytes.length !== size || crc32(bytes) !== crc) throw new TakeFileError('file-damaged', { name });
  return bytes;
}

function inflate(packed: Uint8Array, { name, size }: ZipEntry): Uint8Array {
  const damaged = () => new TakeFileError('file-damaged', { name });
  // What is claimed is only believed as far as deflate can go: 1 byte holds at most 1032.
  if (size > packed.length * 1032 + 64) throw damaged();
  const bytes = new Uint8Array(size);
  let length = 0;
  let finished = false;
  const inflater = new Inflate((chunk, final) => {
    if (length + chunk.length > size) throw damaged();
    bytes.set(chunk, length);
    length += chunk.length;
    finished = final;
  });
  try {
    for (let from = 0; from < packed.length; from += atOnce) {
      const to = Math.min(from + atOnce, packed.length);
      inflater.push(packed.subarray(from, to), to === packed.length);
    }
  } catch {
    throw damaged();
  }
  if (!finished || length !== size) throw damaged();
  return bytes;
}
