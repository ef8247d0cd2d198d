import { type WavHead, wavDepths, wavHead } from './wav-head.ts';

export interface WavContents {
  /** One array a channel, equally long, full scale ±1. */
  readonly channels: readonly Float32Array[];
  /** Hz. */
  readonly sampleRate: number;
  readonly depth: WavHead['depth'];
}

type WriteSample = (view: DataView, at: number, sample: number) => void;

const writers: Readonly<Record<WavContents['depth'], WriteSample>> = {
  int16: (view, at, sample) => view.setInt16(at, integer(sample, 16), true),
  int24: writeInt24,
  float32: (view, at, sample) => view.setFloat32(at, sample, true),
};

/**
 * The bytes of a RIFF/WAVE file. Integers are the sample times 2^(bits − 1), rounded and held within the depth, without
 * dither, so that reading gives a sample that is a whole number of steps back exactly.
 * Throws a RangeError for no channel, more than 65535, channels of unequal length, samples that aren't numbers,
 * or a file beyond 4 GiB.
 *
 * @example
 * writeWav({ channels: [Float32Array.of(0, 0.5, -1)], sampleRate: 48000, depth: 'int16' }); // 50 bytes
 */
export function writeWav({ channels, sampleRate, depth }: WavContents): Uint8Array<ArrayBuffer> {
  const { bytes } = wavDepths[depth];
  const write = writers[depth];
  const frames = channels[0]?.length ?? 0;
  const frameBytes = channels.length * bytes;
  const head = wavHead({ channels: channels.length, frames, sampleRate, depth });
  if (channels.some(({ length }) => length !== frames))
    throw new RangeError('The channels differ in length.');
  const dataAt = head.length;
  const dataBytes = frames * frameBytes;
  const file = new Uint8Array(dataAt + dataBytes + (dataBytes % 2));
  file.set(head);
  const view = new DataView(file.buffer);
  channels.forEach((samples, channel) => {
    for (let frame = 0, at = dataAt + channel * bytes; frame < frames; frame++, at += frameBytes) {
      const sample = samples[frame]!;
      if (!Number.isFinite(sample))
        throw new RangeError(`Sample ${frame} of channel ${channel} is ${sample}.`);
      write(view, at, sample);
    }
  });
  return file;
}

function integer(sample: number, bits: number): number {
  const scale = 2 ** (bits - 1);
  return Math.max(-scale, Math.min(scale - 1, Math.round(sample * scale)));
}

function writeInt24(view: DataView, at: number, sample: number): void {
  const value = integer(sample, 24);
  view.setUint8(at, value & 0xff);
  view.setInt16(at + 1, value >> 8, true);
}
