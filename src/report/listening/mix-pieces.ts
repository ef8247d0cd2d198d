import type { Arrangement, Piece } from './piece.ts';

/** Samples at full scale ±1 with their rate, Hz. */
export interface Sound {
  readonly samples: Float32Array;
  readonly sampleRate: number;
}

/** What is heard of an arrangement in `count` samples from sample `first` on, its clicks left out. */
export function mixPieces(
  sound: Sound,
  arrangement: Arrangement,
  first: number,
  count: number,
): Float32Array {
  const out = new Float32Array(count);
  for (const [begin, pieces] of rounds(arrangement, sound.sampleRate, first, count)) {
    for (const piece of pieces) addPiece(out, sound, piece, begin - first);
  }
  return out;
}

/** Samples at which the arrangement begins, as often as its sound reaches into the window. */
function* rounds(
  { pieces, length, goesRound }: Arrangement,
  rate: number,
  first: number,
  count: number,
): Generator<[number, readonly Piece[]]> {
  if (!goesRound) {
    yield [0, pieces];
    return;
  }
  const period = Math.max(1, Math.round(length * rate));
  const last = Math.floor((first + count) / period);
  // A piece may begin before its round or end behind it.
  for (let round = Math.max(0, Math.floor(first / period) - 1); round <= last + 1; round++) {
    yield [round * period, pieces];
  }
}

function addPiece(out: Float32Array, { samples, sampleRate }: Sound, piece: Piece, shift: number): void {
  const first = Math.round(piece.at * sampleRate);
  const at = shift + first;
  // Rounded from the distance, so that pieces left in their places stay in step with each other to the sample.
  const source = first + Math.round((piece.from - piece.at) * sampleRate);
  const nominal = Math.round((piece.at + piece.to - piece.from) * sampleRate) - first;
  const fadeIn = Math.round(piece.fadeIn * sampleRate);
  const fadeOut = Math.round(piece.fadeOut * sampleRate);
  const begin = Math.max(0, -at, -source);
  const end = Math.min(nominal + fadeOut, out.length - at, samples.length - source);
  for (let i = begin; i < end; i++) {
    const comingIn = i < fadeIn ? (i + 0.5) / fadeIn : 1;
    const goingOut = i < nominal ? 1 : 1 - (i - nominal + 0.5) / fadeOut;
    out[at + i]! += piece.gain * comingIn * goingOut * samples[source + i]!;
  }
}
