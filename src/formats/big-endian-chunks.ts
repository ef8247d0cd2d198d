import type { Bytes } from './bytes.ts';
import type { SampleData } from './sample-layout.ts';

/** A part of a file with a name of four characters. */
interface BigEndianChunk extends SampleData {
  readonly id: string;
}

/** How a kind of file writes its chunks. */
interface ChunkForm {
  /** Bytes of a chunk's length: 4, or 8 in which −1 says that it goes to the end of the file. */
  readonly sizeBytes: 4 | 8;
  /** Chunks of odd length are followed by a pad byte. */
  readonly padded: boolean;
}

/** No sane recording has as many; keeps a file of empty chunks from being walked for minutes. Our judgement. */
const mostChunks = 4096;

/**
 * Walks the chunks of a big-endian file from `from` on until it ends or what follows can't be a chunk. `open` is the
 * chunk whose writer left its length at −1: it reaches to the end of the file.
 *
 * @example
 * const file = memoryBytes(new TextEncoder().encode('abcd\0\0\0\x02hi'));
 * [...bigEndianChunks(file, 0, { sizeBytes: 4, padded: true })]; // [{ id: 'abcd', from: 8, to: 10, … }]
 */
export function* bigEndianChunks(
  bytes: Bytes,
  from: number,
  { sizeBytes, padded }: ChunkForm,
): Generator<BigEndianChunk> {
  const headerBytes = 4 + sizeBytes;
  for (let at = from, count = 0; count < mostChunks && at + headerBytes <= bytes.length; count++) {
    const head = bytes.read(at, at + headerBytes);
    const id = String.fromCharCode(...head.subarray(0, 4));
    if (!/^[ -~]{4}$/.test(id)) return;
    const view = new DataView(head.buffer, head.byteOffset, head.length);
    const stated = sizeBytes === 4 ? view.getUint32(4) : Number(view.getBigInt64(4));
    const open = stated < 0 || (sizeBytes === 4 && stated === 0xffffffff);
    const start = at + headerBytes;
    const left = bytes.length - start;
    const to = start + (open ? left : Math.min(stated, left));
    yield { id, from: start, to, missing: open ? 0 : Math.max(0, stated - left), open };
    at = to + (padded ? (to - start) % 2 : 0);
  }
}
