import { type BandBlock, bandSplit, framesAtATime } from '../../src/core/signal/band-frames.ts';
import type { Source } from '../../src/core/signal/source.ts';

/** Band powers of the first channel of a recording, block by block; the last block is filled up with silence. */
export function* bandFrames(source: Source): Generator<BandBlock> {
  const { inputHop, next } = bandSplit(source.sampleRate);
  const total = Math.ceil(source.length / inputHop);
  for (let from = 0; from < total; from += framesAtATime) {
    const to = Math.min(from + framesAtATime, total);
    yield next(source.read(0, from * inputHop, to * inputHop));
  }
}
