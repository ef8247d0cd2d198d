import { type Random, seeded } from '../../fixtures/generator/random.ts';

const extremes = [0, 1, 0x7f, 0x80, 0xff];
/** Longest piece that one change copies or takes away. */
const longestPiece = 64;

const below = (random: Random, count: number) => Math.floor(random.uniform() * count);

/** One random change of bytes. `words`: pieces that mean something to the parser. */
function changed(
  bytes: Uint8Array,
  random: Random,
  words: readonly Uint8Array[],
  other: Uint8Array,
): Uint8Array {
  const at = below(random, bytes.length + 1);
  const piece = (from: Uint8Array) => {
    const start = below(random, from.length + 1);
    return from.subarray(start, start + 1 + below(random, longestPiece));
  };
  const put = (middle: Uint8Array, skip: number) =>
    Buffer.concat([bytes.subarray(0, at), middle, bytes.subarray(at + skip)]);
  switch (below(random, 8)) {
    case 0:
      return put(Uint8Array.of((bytes[at] ?? 0) ^ (1 << below(random, 8))), 1);
    case 1:
      return put(Uint8Array.of(extremes[below(random, extremes.length)]!), 1);
    case 2:
      return put(piece(bytes), 0);
    case 3:
      return put(new Uint8Array(0), 1 + below(random, longestPiece));
    case 4:
      return bytes.subarray(0, at);
    case 5:
      return put(piece(other), below(random, longestPiece));
    case 6:
      return put(new Uint8Array(4).fill(extremes[below(random, extremes.length)]!), 4);
    default:
      return words.length === 0 ? put(piece(bytes), 4) : put(words[below(random, words.length)]!, 0);
  }
}

/**
 * Damaged copies of good files: one to three random changes each, of bits, bytes, pieces and lengths. The same seed gives
 * the same copies.
 */
export function* mutations(
  corpus: readonly Uint8Array[],
  { seed, count, words = [] }: { seed: number; count: number; words?: readonly Uint8Array[] },
): Generator<Uint8Array> {
  const random = seeded(seed);
  for (let i = 0; i < count; i++) {
    let bytes = corpus[below(random, corpus.length)]!;
    for (let k = 1 + below(random, 3); k > 0; k--)
      bytes = changed(bytes, random, words, corpus[below(random, corpus.length)]!);
    yield bytes;
  }
}
