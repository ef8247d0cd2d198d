export interface WavContents {
  /** One array a channel, equally long, full scale ±1. */
  readonly channels: readonly Float32Array[];
  /** Hz. */
  readonly sampleRate: number;
  readonly depth: 'int16' | 'int24' | 'float32';
}

type WriteSample = (view: DataView, at: number, sample: number) => void;

const depths: Readonly<Record<WavContents['depth'], { tag: number; bytes: number; write: WriteSample }>> = {
  int16: { tag: 1, bytes: 2, write: (view, at, sample) => view.setInt16(at, integer(sample, 16), true) },
  int24: { tag: 1, bytes: 3, write: writeInt24 },
  float32: { tag: 3, bytes: 4, write: (view, at, sample) => view.setFloat32(at, sample, true) },
};

/**
 * The bytes of a RIFF/WAVE file. Integers are the sample times 2^(bits − 1), rounded and held within the depth, without
 * dither, so that reading gives a sample that is a whole number of steps back exactly. Float files carry the
 * extension size and the `fact` chunk that formats other than PCM need (Microsoft, New Multimedia Data Types
 * and Data Techniques, 1994).
 * Throws a RangeError for no channel, more than 65535, channels of unequal length, samples that aren't numbers,
 * or a file beyond 4 GiB.
 *
 * @example
 * writeWav({ channels: [Float32Array.of(0, 0.5, -1)], sampleRate: 48000, depth: 'int16' }); // 50 bytes
 */
export function writeWav({ channels, sampleRate, depth }: WavContents): Uint8Array<ArrayBuffer> {
  const { tag, bytes, write } = depths[depth];
  const frames = channels[0]?.length ?? 0;
  const frameBytes = channels.length * bytes;
  const dataBytes = frames * frameBytes;
  const formatBytes = tag === 1 ? 16 : 18;
  const factBytes = tag === 1 ? 0 : 12;
  const dataAt = 12 + 8 + formatBytes + factBytes + 8;
  const fileBytes = dataAt + dataBytes + (dataBytes % 2);
  if (channels.length === 0 || frameBytes > 0xffff)
    throw new RangeError(`${channels.length} channels can't be written.`);
  if (channels.some(({ length }) => length !== frames))
    throw new RangeError('The channels differ in length.');
  if (fileBytes - 8 > 0xffffffff) throw new RangeError('A wave file holds 4 GiB at most.');

  const file = new Uint8Array(fileBytes);
  const view = new DataView(file.buffer);
  const header = (at: number, id: string, size: number): void => {
    file.set(new TextEncoder().encode(id), at);
    view.setUint32(at + 4, size, true);
  };
  header(0, 'RIFF', fileBytes - 8);
  file.set(new TextEncoder().encode('WAVE'), 8);
  header(12, 'fmt ', formatBytes);
  view.setUint16(20, tag, true);
  view.setUint16(22, channels.length, true);
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, sampleRate * frameBytes, true);
  view.setUint16(32, frameBytes, true);
  view.setUint16(34, 8 * bytes, true);
  if (tag !== 1) {
    header(38, 'fact', 4);
    view.setUint32(46, frames, true);
  }
  header(dataAt - 8, 'data', dataBytes);
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
