import { type WavContents, writeWav } from './write-wav.ts';

const headerBytes = 44;
const bytesOf = { int16: 2, int24: 3 } as const;

interface WavBlocks {
  /** One channel, full scale ±1, in order. */
  readonly blocks: Iterable<Float32Array>;
  /** Samples of all blocks. */
  readonly frames: number;
  readonly sampleRate: number;
  readonly depth: Exclude<WavContents['depth'], 'float32'>;
}

/**
 * The same bytes as `writeWav` gives for one channel, block by block, so that a long file needs no memory. Throws a
 * RangeError for a file beyond 4 GiB before anything is given.
 *
 * @example [...wavBlocks({ blocks: [Float32Array.of(0, 0.5)], frames: 2, sampleRate: 48000, depth: 'int16' })] // 48 bytes
 */
export function* wavBlocks({ blocks, frames, sampleRate, depth }: WavBlocks): Generator<Uint8Array> {
  const dataBytes = frames * bytesOf[depth];
  const odd = dataBytes % 2;
  if (headerBytes - 8 + dataBytes + odd > 0xffffffff)
    throw new RangeError('A wave file holds 4 GiB at most.');
  const header = writeWav({ channels: [new Float32Array(0)], sampleRate, depth });
  const view = new DataView(header.buffer);
  view.setUint32(4, headerBytes - 8 + dataBytes + odd, true);
  view.setUint32(headerBytes - 4, dataBytes, true);
  yield header;
  for (const samples of blocks) {
    const written = writeWav({ channels: [samples], sampleRate, depth });
    yield written.subarray(headerBytes, headerBytes + samples.length * bytesOf[depth]);
  }
  if (odd === 1) yield new Uint8Array(1);
}
