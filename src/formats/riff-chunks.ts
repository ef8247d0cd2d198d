import type { Bytes } from './bytes.ts';

export interface RiffChunk {
  readonly id: string;
  /** Where the contents begin and end in the file; the end never lies past the file's. */
  readonly from: number;
  readonly to: number;
  /** Bytes that the header promises and the file doesn't hold. */
  readonly missing: number;
  /** The writer left the length open, so the contents are taken to reach to the end of the file. */
  readonly open: boolean;
}

const headerBytes = 8;
/** 2³² − 1: the length stands elsewhere or was never written. */
const unwritten = 0xffffffff;
/** Programs that write to a pipe promise about 2 GiB (our observation: 0x7ffff000 and up). */
const nearlyTwoGiB = 0x7fff0000;
/** No sane recording has as many; keeps a file of empty chunks from being walked for minutes. Our judgement. */
const mostChunks = 4096;

/** Ids that are met in wave files, to tell a header from chance characters. */
const knownIds = new Set(
  // Ids are four characters, some of them spaces; a bar parts them.
  'fmt |data|LIST|ds64|JUNK|junk|bext|fact|id3 |ID3 |cue |smpl|inst|iXML|axml|chna|PEAK|FLLR|PAD |cart|umid'.split(
    '|',
  ),
);

/**
 * Walks the chunks of a RIFF file from `from` on, in the order in which they stand, until the file ends or what
 * follows can't be a chunk. Chunks of odd length are followed by a pad byte (RIFF, IBM and Microsoft 1991,
 * chapter 2); where a writer forgot it, the walk goes on without. `longSizes` holds the 64-bit lengths of chunks
 * whose own field says 0xFFFFFFFF (ITU-R BS.2088); the first of an id's lengths is its first chunk's.
 *
 * @example
 * const file = memoryBytes(new TextEncoder().encode('abcd\x02\0\0\0hi'));
 * [...riffChunks(file, 0)]; // [{ id: 'abcd', from: 8, to: 10, missing: 0, open: false }]
 */
export function* riffChunks(
  bytes: Bytes,
  from: number,
  longSizes: ReadonlyMap<string, number> = new Map(),
): Generator<RiffChunk> {
  let at = from;
  for (let count = 0; count < mostChunks; count++) {
    const header = chunkHeader(bytes, at);
    if (header === undefined) return;
    const start = at + headerBytes;
    const left = bytes.length - start;
    const longSize =
      header.size === unwritten ? (longSizes.get(header.id) ?? Number.POSITIVE_INFINITY) : undefined;
    const size = longSize ?? header.size;
    const mostStated = longSize === undefined ? nearlyTwoGiB : Number.MAX_SAFE_INTEGER;
    const open = header.id === 'data' && lengthLeftOpen(bytes, start, size, mostStated);
    const to = open ? bytes.length : start + Math.min(size, left);
    yield { id: header.id, from: start, to, missing: open ? 0 : Math.max(0, size - left), open };
    at = size % 2 === 0 || to === bytes.length ? to : afterOddChunk(bytes, to);
  }
}

/** `mostStated`: from this length on, what the file doesn't hold was never meant. */
function lengthLeftOpen(bytes: Bytes, start: number, size: number, mostStated: number): boolean {
  const left = bytes.length - start;
  if (size === 0) return left > 0 && !canBeChunk(bytes, start);
  return size > left && size >= mostStated;
}

function afterOddChunk(bytes: Bytes, end: number): number {
  const [padded, unpadded] = [end + 1, end];
  if (isKnownChunk(bytes, padded)) return padded;
  if (isKnownChunk(bytes, unpadded)) return unpadded;
  return canBeChunk(bytes, padded) || !canBeChunk(bytes, unpadded) ? padded : unpadded;
}

function isKnownChunk(bytes: Bytes, at: number): boolean {
  return knownIds.has(chunkHeader(bytes, at)?.id ?? '');
}

/** A header whose contents fit into what is left of the file. */
function canBeChunk(bytes: Bytes, at: number): boolean {
  const header = chunkHeader(bytes, at);
  return header !== undefined && at + headerBytes + header.size <= bytes.length;
}

/** An id is four printable ASCII characters; anything else isn't a chunk. */
function chunkHeader(bytes: Bytes, at: number): { id: string; size: number } | undefined {
  if (at + headerBytes > bytes.length) return undefined;
  const head = bytes.read(at, at + headerBytes);
  const id = String.fromCharCode(...head.subarray(0, 4));
  if (!/^[!-~][ -~]{3}$/.test(id)) return undefined;
  return { id, size: new DataView(head.buffer, head.byteOffset).getUint32(4, true) };
}
