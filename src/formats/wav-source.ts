import type { Source } from '../core/signal/source.ts';
import type { Bytes } from './bytes.ts';
import { decodePcm } from './decode-pcm.ts';
import type { RiffLayout } from './riff-layout.ts';

/** A block is about this large in the file; with the samples decoded from it a few hundred KiB. */
const blockBytes = 64 * 1024;
/** Two, because a window that slides over the edge of a block goes back and forth between its neighbours. */
const keptBlocks = 2;

interface Block {
  readonly index: number;
  readonly channels: readonly Float32Array[];
}

/**
 * A recording read from a wave file as it is asked for; memory doesn't grow with the file. Throws what `bytes` throws.
 *
 * @example
 * const bytes = memoryBytes(writeWav({ channels: [Float32Array.of(0, 0.5)], sampleRate: 48000, depth: 'int16' }));
 * const outcome = riffLayout(bytes);
 * if (outcome.ok) wavSource(bytes, outcome.layout).read(0, 0, 3); // 0, 0.5, 0
 */
export function wavSource(bytes: Bytes, layout: RiffLayout): Source {
  const { channels, frames, frameBytes, dataFrom, sampleRate } = layout;
  const blockFrames = Math.max(1, Math.floor(blockBytes / frameBytes));
  let kept: Block[] = [];

  function block(index: number): Block {
    const found = kept.find((candidate) => candidate.index === index) ?? load(index);
    kept = [found, ...kept.filter((candidate) => candidate !== found)].slice(0, keptBlocks);
    return found;
  }

  function load(index: number): Block {
    const first = index * blockFrames;
    const last = Math.min(first + blockFrames, frames);
    const encoded = bytes.read(dataFrom + first * frameBytes, dataFrom + last * frameBytes);
    return { index, channels: decodePcm(encoded, layout) };
  }

  return {
    sampleRate,
    channels,
    length: frames,
    read(channel, from, to) {
      if (!Number.isInteger(channel) || channel < 0 || channel >= channels) {
        throw new RangeError(`Channel ${channel} of a recording with ${channels}.`);
      }
      const samples = new Float32Array(Math.max(0, to - from));
      const end = Math.min(to, frames);
      let at = Math.max(from, 0);
      while (at < end) {
        const index = Math.floor(at / blockFrames);
        const first = index * blockFrames;
        const upTo = Math.min(end, first + blockFrames);
        samples.set(block(index).channels[channel]!.subarray(at - first, upTo - first), at - from);
        at = upTo;
      }
      return samples;
    },
  };
}
