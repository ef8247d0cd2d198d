import wavDecoder from 'wav-decoder';
import type { WaveFormat } from './wave-format.ts';

/**
 * How samples are written; as in wave files, little-endian and single bytes without sign, where nothing else is said.
 */
export interface SampleShape extends Pick<WaveFormat, 'coding' | 'channels' | 'sampleBytes'> {
  readonly bigEndian?: boolean;
  readonly signedBytes?: boolean;
}

/*
 * Who decodes what. The package wav-decoder 1.3 decodes 32-bit integers and both floats right and at 1,800 times real
 * time, so it gets those, a block at a time behind a plain header of our own: it doesn't know extensible formats, pad
 * bytes, `data` before `fmt ` or a length left at 0, and wants the whole file. The three other depths are read here:
 *   8 bits   its symmetric scale reads the zero, 128, as +0.0039, its other scale stretches the upper half;
 *   16 bits  right in its symmetric scale, but about 30 ms for a minute of 48 kHz mono against 8 ms here
 *            (Node 20, one core of a small server), and nearly every recording has this depth;
 *   24 bits  its lowest value, 0x800000, reads as +1.
 */
/**
 * Decodes whole frames of interleaved samples into one array a channel, full scale ±1: integers are
 * divided by 2^(bits − 1), so that the lowest is −1. What isn't a number in a float file becomes silence, for one
 * such sample would spoil every filter after it.
 *
 * @example
 * decodePcm(Uint8Array.of(0x00, 0x80, 0x00, 0x40), { coding: 'integer', channels: 1, sampleBytes: 2 });
 * // [Float32Array.of(-1, 0.5)]
 */
export function decodePcm(written: Uint8Array, shape: SampleShape): Float32Array[] {
  if (shape.coding === 'integer' && ownDecoders[shape.sampleBytes] !== undefined)
    return Array.from({ length: shape.channels }, (_, channel) => decodeChannel(written, shape, channel));
  const decoded = wavDecoder.decode.sync(withPlainHeader(asInWave(written, shape), shape), {
    symmetric: true,
  }).channelData;
  if (shape.coding === 'float') decoded.forEach(silenceNonFinite);
  return decoded;
}

/** The same for one channel, in `room` where that is large enough. */
export function decodeChannel(
  written: Uint8Array,
  shape: SampleShape,
  channel: number,
  room?: Float32Array,
): Float32Array {
  const { coding, channels, sampleBytes } = shape;
  const decode = coding === 'integer' ? ownDecoders[sampleBytes] : undefined;
  if (decode === undefined) return decodePcm(written, shape)[channel]!;
  const bytes = asInWave(written, shape);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const frameBytes = channels * sampleBytes;
  const frames = Math.floor(bytes.length / frameBytes);
  const samples = room && room.length >= frames ? room.subarray(0, frames) : new Float32Array(frames);
  decode(view, samples, channel * sampleBytes, frameBytes);
  return samples;
}

type OwnDecoder = (view: DataView, samples: Float32Array, at: number, step: number) => void;

/** By bytes a sample. Loops written out, because a call for every sample costs five times as much. */
const ownDecoders: Readonly<Record<number, OwnDecoder>> = {
  1: (view, samples, at, step) => {
    for (let frame = 0, byte = at; frame < samples.length; frame++, byte += step) {
      samples[frame] = (view.getUint8(byte) - 128) / 2 ** 7;
    }
  },
  2: (view, samples, at, step) => {
    for (let frame = 0, byte = at; frame < samples.length; frame++, byte += step) {
      samples[frame] = view.getInt16(byte, true) / 2 ** 15;
    }
  },
  3: (view, samples, at, step) => {
    for (let frame = 0, byte = at; frame < samples.length; frame++, byte += step) {
      samples[frame] = ((view.getInt16(byte + 1, true) << 8) | view.getUint8(byte)) / 2 ** 23;
    }
  },
};

/** The same samples as a wave file has them; bytes that are so already aren't copied. */
function asInWave(bytes: Uint8Array, { sampleBytes, bigEndian = false, signedBytes = false }: SampleShape) {
  if (sampleBytes === 1) return signedBytes ? bytes.map((byte) => byte ^ 0x80) : bytes;
  if (!bigEndian) return bytes;
  const turned = new Uint8Array(bytes.length);
  for (let at = 0; at + sampleBytes <= bytes.length; at += sampleBytes)
    for (let byte = 0; byte < sampleBytes; byte++) turned[at + byte] = bytes[at + sampleBytes - 1 - byte]!;
  return turned;
}

function withPlainHeader(bytes: Uint8Array, { coding, channels, sampleBytes }: SampleShape): ArrayBuffer {
  const file = new ArrayBuffer(44 + bytes.length);
  const view = new DataView(file);
  const rate = 48000; // any: only the samples are taken from what comes back
  view.setUint32(0, 0x52494646); // RIFF
  view.setUint32(4, 36 + bytes.length, true);
  view.setUint32(8, 0x57415645); // WAVE
  view.setUint32(12, 0x666d7420); // fmt
  view.setUint32(16, 16, true);
  view.setUint16(20, coding === 'float' ? 3 : 1, true);
  view.setUint16(22, channels, true);
  view.setUint32(24, rate, true);
  view.setUint32(28, rate * channels * sampleBytes, true);
  view.setUint16(32, channels * sampleBytes, true);
  view.setUint16(34, 8 * sampleBytes, true);
  view.setUint32(36, 0x64617461); // data
  view.setUint32(40, bytes.length, true);
  new Uint8Array(file, 44).set(bytes);
  return file;
}

function silenceNonFinite(samples: Float32Array): void {
  for (let index = 0; index < samples.length; index++) {
    if (!Number.isFinite(samples[index])) samples[index] = 0;
  }
}
