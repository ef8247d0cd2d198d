import { describe, expect, it } from 'vitest';
import wavDecoder from 'wav-decoder';
import { decodePcm } from '../../src/formats/decode-pcm.ts';
import { chunk, extensible, format, wave } from './wave-bytes.ts';

const decode = (
  bytes: number[],
  sampleBytes: number,
  coding: 'integer' | 'float' = 'integer',
  channels = 1,
) => decodePcm(Uint8Array.from(bytes), { coding, channels, sampleBytes }).map((samples) => [...samples]);

// Samples up to 8 bits are offset binary with 128 for silence, wider ones two's complement, little-endian (IBM and
// Microsoft 1991, chapter 3, "Data Format of the Samples").
describe('decodePcm by the definitions', () => {
  it('runs the example of its comment', () => {
    const samples = decodePcm(Uint8Array.of(0, 0x80, 0, 0x40), {
      coding: 'integer',
      channels: 1,
      sampleBytes: 2,
    });
    expect(samples).toEqual([Float32Array.of(-1, 0.5)]);
  });

  it('8 bits: 128 is silence, 0 the lowest', () => {
    expect(decode([128, 0, 255, 192, 64], 1)).toEqual([[0, -1, 127 / 128, 0.5, -0.5]]);
  });

  it('16 bits', () => {
    const bytes = [0x00, 0x00, 0x00, 0x80, 0xff, 0x7f, 0x01, 0x00, 0xff, 0xff, 0x00, 0x40];
    expect(decode(bytes, 2)).toEqual([[0, -1, 32767 / 32768, 1 / 32768, -1 / 32768, 0.5]]);
  });

  it('24 bits, the lowest value included', () => {
    const bytes = [0, 0, 0, 0, 0, 0x80, 0xff, 0xff, 0x7f, 1, 0, 0, 0xff, 0xff, 0xff, 0xff, 0, 0];
    expect(decode(bytes, 3)).toEqual([[0, -1, 1 - 2 ** -23, 2 ** -23, -(2 ** -23), 255 * 2 ** -23]]);
  });

  it('32 bits', () => {
    expect(decode([0, 0, 0, 0x80, 0, 0, 0, 0x40, 0, 1, 0, 0, 0xff, 0xff, 0xff, 0xff], 4)).toEqual([
      [-1, 0.5, 2 ** -23, -(2 ** -31)],
    ]);
  });

  it('floats of 32 and 64 bits (IEEE 754), beyond full scale too', () => {
    expect(decode([0, 0, 0x80, 0x3f, 0, 0, 0, 0xc0], 4, 'float')).toEqual([[1, -2]]);
    expect(decode([0, 0, 0, 0, 0, 0, 0xf0, 0x3f, 0, 0, 0, 0, 0, 0, 0xd0, 0xbf], 8, 'float')).toEqual([
      [1, -0.25],
    ]);
  });

  it('makes silence of floats that are no numbers', () => {
    expect(decode([0, 0, 0xc0, 0x7f, 0, 0, 0x80, 0x7f, 0, 0, 0, 0x3f], 4, 'float')).toEqual([[0, 0, 0.5]]);
    expect(decode([0, 0, 0, 0, 0, 0, 0xf0, 0x7f], 8, 'float')).toEqual([[0]]);
  });

  it.each([1, 2, 3, 4])(
    'parts interleaved channels of %i bytes a sample and leaves out a broken frame',
    (sampleBytes) => {
      const low = Array.from({ length: sampleBytes - 1 }, () => 0);
      const top = (value: number) => [...low, sampleBytes === 1 ? value + 128 : value & 0xff];
      const bytes = [...top(64), ...top(-64), ...top(32), ...top(-32), 0];
      expect(decode(bytes, sampleBytes, 'integer', 2)).toEqual([
        [0.5, 0.25],
        [-0.5, -0.25],
      ]);
    },
  );

  it('reads bytes that begin at an odd place in memory', () => {
    const bytes = Uint8Array.of(9, 0x00, 0x40).subarray(1);
    expect(decodePcm(bytes, { coding: 'integer', channels: 1, sampleBytes: 2 })).toEqual([
      Float32Array.of(0.5),
    ]);
  });
});

describe('decodePcm against wav-decoder', () => {
  const theirs = (bytes: number[], bits: number, tag = 1) =>
    wavDecoder.decode.sync(
      wave([chunk('fmt ', format({ tag, bits })), chunk('data', bytes)]).buffer as ArrayBuffer,
      {
        symmetric: true,
      },
    ).channelData[0]!;
  const noise = Array.from({ length: 2400 }, (_, index) => (index * index * 7919 + index * 31) % 256);

  it.each([16, 24, 32])('agrees on %i-bit integers', (bits) => {
    expect(decode(noise, bits / 8)[0]).toEqual([...theirs(noise, bits)]);
  });

  // Why these two depths aren't left to the package. When one of these fails, it has been mended and may be used.
  it('differs where the package is wrong', () => {
    expect([...theirs([0, 0, 0x80], 24)]).toEqual([1]);
    expect(theirs([128], 8)[0]).toBeCloseTo(1 / 255, 6);
  });

  // And why it never sees a file as it is.
  it('fails on layouts that are allowed', () => {
    const decodeFile = (...chunks: number[][]) => wavDecoder.decode.sync(wave(chunks).buffer as ArrayBuffer);
    const [fmt, data] = [chunk('fmt ', format()), chunk('data', [0, 0x40])];
    expect(decodeFile(fmt, data).channelData).toEqual([Float32Array.of(16384 / 32767)]);
    expect(() => decodeFile(chunk('fmt ', extensible(1, 16)), data)).toThrow('Unsupported format');
    expect(() => decodeFile(fmt, chunk('LIST', [1, 2, 3]), data)).toThrow();
    expect(() => decodeFile(data, fmt)).toThrow();
    expect(decodeFile(fmt, chunk('data', [0, 0x40], 0)).length).toBe(0);
  });
});
