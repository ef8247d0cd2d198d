import { roomFor } from './room-for.ts';
import type { Source } from './source.ts';

/** Frames in a piece of memory. */
const pieceFrames = 65_536;

/** A recording of one channel that comes piece by piece. */
interface GrowingSource {
  /** Samples that begin at frame `at`; what is missing before them is silence, what is there already is left out. */
  add(at: number, samples: Float32Array): void;
  /** What there is by now. It doesn't change when more comes. */
  source(): Source;
}

/**
 * An empty recording at `sampleRate`, Hz, that grows. Nothing is copied again when it does.
 *
 * @example growing.add(0, Float32Array.of(0.5)); growing.source().length // 1
 */
export function growingSource(sampleRate: number): GrowingSource {
  const pieces: Float32Array[] = [];
  let filled = 0;

  function read(from: number, to: number, length: number, room?: Float32Array): Float32Array {
    const out = roomFor(Math.max(0, to - from), room);
    const last = Math.min(to, length);
    for (let at = Math.max(0, from); at < last; ) {
      const inPiece = at % pieceFrames;
      const count = Math.min(last - at, pieceFrames - inPiece);
      out.set(pieces[(at - inPiece) / pieceFrames]!.subarray(inPiece, inPiece + count), at - from);
      at += count;
    }
    return out;
  }

  return {
    add(at, samples) {
      const end = at + samples.length;
      while (pieces.length * pieceFrames < end) pieces.push(new Float32Array(pieceFrames));
      for (let n = Math.max(at, filled); n < end; ) {
        const inPiece = n % pieceFrames;
        const count = Math.min(end - n, pieceFrames - inPiece);
        pieces[(n - inPiece) / pieceFrames]!.set(samples.subarray(n - at, n - at + count), inPiece);
        n += count;
      }
      filled = Math.max(filled, end);
    },
    source() {
      const length = filled;
      return {
        sampleRate,
        channels: 1,
        length,
        read: (_, from, to, room) => read(from, to, length, room),
      };
    },
  };
}
