import { type WavHead, wavDepths, wavHead } from './wav-head.ts';
import { writeWav } from './write-wav.ts';

interface WavBlocks {
  /** One channel, full scale ±1, in order. */
  readonly blocks: Iterable<Float32Array>;
  /** Samples of all blocks. */
  readonly frames: number;
  readonly sampleRate: number;
  readonly depth: Exclude<WavHead['depth'], 'float32'>;
}

/**
 * The same bytes as `writeWav` gives for one channel, block by block, so that a long file needs no memory. Throws a
 * RangeError for a file beyond 4 GiB before anything is given.
 *
 * @example
 * [...wavBlocks({ blocks: [Float32Array.of(0, 0.5)], frames: 2, sampleRate: 48000, depth: 'int16' })]; // 44 and 4 bytes
 */
export function* wavBlocks({ blocks, frames, sampleRate, depth }: WavBlocks): Generator<Uint8Array> {
  const { bytes } = wavDepths[depth];
  const head = wavHead({ channels: 1, frames, sampleRate, depth });
  yield head;
  for (const samples of blocks) {
    const written = writeWav({ channels: [samples], sampleRate, depth });
    yield written.subarray(head.length, head.length + samples.length * bytes);
  }
  if ((frames * bytes) % 2 === 1) yield new Uint8Array(1);
}
