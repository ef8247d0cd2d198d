import type { FileHandle } from 'node:fs/promises';

/** One file of an archive: where its bytes begin, and how many they are. */
export interface TarEntry {
  readonly name: string;
  readonly from: number;
  readonly size: number;
}

const blockBytes = 512;
/** What eleven octal digits can say; no file of a library comes near. */
const mostBytes = 0o77777777777;

/**
 * A file's header as POSIX.1-1988 (`ustar`) has it: readable for its owner alone, without a name of an owner.
 *
 * @example tarHeader('takes.sqlite', 4096, 0).length // 512
 */
export function tarHeader(name: string, size: number, modifiedAt: number): Uint8Array {
  if (size > mostBytes || name.length > 100) throw new RangeError(`"${name}" can't stand in an archive`);
  const header = Buffer.alloc(blockBytes);
  const octal = (value: number, digits: number) => `${value.toString(8).padStart(digits, '0')}\0`;
  const put = (at: number, text: string) => header.write(text, at, 'latin1');
  put(0, name);
  put(100, octal(0o600, 7));
  put(108, octal(0, 7));
  put(116, octal(0, 7));
  put(124, octal(size, 11));
  put(136, octal(Math.max(0, Math.floor(modifiedAt / 1000)), 11));
  put(148, ' '.repeat(8));
  put(156, '0');
  put(257, 'ustar\x0000');
  put(148, `${sumOf(header).toString(8).padStart(6, '0')}\0 `);
  return header;
}

/** Zeros that fill the last block of a file of this size. */
export const tarPadding = (size: number): Uint8Array =>
  new Uint8Array((blockBytes - (size % blockBytes)) % blockBytes);

/** The end of an archive. */
export const tarEnd = (): Uint8Array => new Uint8Array(2 * blockBytes);

/**
 * The files of an archive, by name, without reading what they hold. Throws for what no archive of plain files is: a
 * wrong sum, a link or a folder, a name twice, an end that is missing.
 */
export async function tarEntries(file: FileHandle): Promise<ReadonlyMap<string, TarEntry>> {
  const { size: length } = await file.stat();
  const entries = new Map<string, TarEntry>();
  const header = Buffer.alloc(blockBytes);
  let at = 0;
  for (;;) {
    const { bytesRead } = await file.read(header, 0, blockBytes, at);
    if (bytesRead < blockBytes) throw new Error('its end is missing');
    if (header.every((byte) => byte === 0)) return entries;
    const entry = readHeader(header, at + blockBytes);
    if (entries.has(entry.name)) throw new Error(`it holds "${entry.name}" twice`);
    entries.set(entry.name, entry);
    at = entry.from + entry.size + tarPadding(entry.size).length;
    if (at > length) throw new Error('its end is missing');
  }
}

function readHeader(header: Buffer, from: number): TarEntry {
  const field = (at: number, bytes: number) =>
    header
      .toString('latin1', at, at + bytes)
      .split('\0')[0]!
      .trim();
  const number = (at: number, bytes: number) => {
    const text = field(at, bytes);
    if (!/^[0-7]+$/.test(text)) throw new Error('a header of it is damaged');
    return Number.parseInt(text, 8);
  };
  const sum = number(148, 8);
  const plain = Buffer.from(header);
  plain.write(' '.repeat(8), 148);
  const isFile = field(156, 1) === '0' && field(257, 5) === 'ustar' && field(345, 155) === '';
  if (sumOf(plain) !== sum || !isFile) throw new Error('a header of it is damaged');
  return { name: field(0, 100), from, size: number(124, 12) };
}

const sumOf = (header: Buffer): number => header.reduce((sum, byte) => sum + byte, 0);
