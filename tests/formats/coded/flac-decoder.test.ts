import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import type { Source } from '../../../src/core/signal/source.ts';
import { memoryBytes } from '../../../src/formats/memory-bytes.ts';
import { openSound } from '../../../src/formats/open-sound.ts';

/** RFC 9639, appendix D: the three example files, byte by byte, with samples that the appendix works out. */
const examples = [
  {
    name: 'D.1, a verbatim subframe with wasted bits',
    hex: `664c 6143 8000 0022 1000 1000 0000 0f00 000f 0ac4 42f0 0000 0001 3e84 b418 07dc 6903 0758
      6a3d ad1a 2e0f fff8 6918 0000 bf03 58fd 0312 8baa 9a`,
    sampleRate: 44100,
    bits: 16,
    samples: [[25588], [10416]],
  },
  {
    name: 'D.2, fixed predictors, two frames, a seek table, a comment and padding',
    hex: `664c 6143 0000 0022 0010 0010 0000 1700 0044 0ac4 42f0 0000 0013 d5b0 5649 75e9 8b8d 8b93
      0422 757b 8103 0300 0012 0000 0000 0000 0000 0000 0000 0000 0000 0010 0400 003a 2000 0000
      7265 6665 7265 6e63 6520 6c69 6246 4c41 4320 312e 332e 3320 3230 3139 3038 3034 0100 0000
      0e00 0000 5449 544c 453d d7a9 d79c d795 d79d 8100 0006 0000 0000 0000 fff8 6998 000f 9912
      0867 0162 3d14 4299 8f5d f70d 6fe0 0c17 caeb 2100 0ee7 a77a 24a1 590c 1217 b603 097b 784f
      aa9a 33d2 85e0 70ad 5b1b 4851 b401 0d99 d2cd 1a68 f1e6 b810 fff8 6918 0102 a402 c382 c40b
      c14a 03ee 48dd 03b6 7c13 30`,
    sampleRate: 44100,
    bits: 16,
    samples: [
      [10372, 18041, 14942, 17876, 15627, 17899, 16242, 18077, 16824, 18263, 17295, -14418, -15201],
      [6070, 10545, 8743, 10449, 9143, 10463, 9502, 10569, 9840, 10680, 10113, -8428, -8895],
    ],
  },
  {
    name: 'D.3, a linear predictor, 8 bits',
    hex: `664c 6143 8000 0022 1000 1000 0000 1f00 001f 07d0 0070 0000 0018 f8f9 e396 f5cb cfc6 dc80
      7f99 7790 6b32 fff8 6802 0017 e944 004f 6f31 3d10 47d2 27cb 6d09 0831 452b dc28 2222 8057 a3`,
    sampleRate: 32000,
    bits: 8,
    samples: [
      [0, 79, 111, 78, 8, -61, -90, -68, -13, 42, 67, 53, 13, -27, -46, -38, -12, 14, 24, 19, 6, -4, -5, 0],
    ],
  },
];

const bytesOf = (hex: string) => Uint8Array.from(Buffer.from(hex.replaceAll(/\s/g, ''), 'hex'));

/** Integers as they stood in the file, channel by channel. */
const integers = (source: Source, bits: number) =>
  Array.from({ length: source.channels }, (_, c) =>
    Array.from(source.read(c, 0, source.length), (sample) => sample * 2 ** (bits - 1)),
  );

/** The signature of a FLAC file: MD5 of its samples, interleaved, little-endian (RFC 9639, 8.2). */
function signature(channels: readonly (readonly number[])[], bits: number): string {
  const bytes = bits / 8;
  const all = Buffer.alloc(channels.length * channels[0]!.length * bytes);
  channels[0]!.forEach((_, i) => {
    channels.forEach((samples, c) => {
      all.writeIntLE(samples[i]!, (i * channels.length + c) * bytes, bytes);
    });
  });
  return createHash('md5').update(all).digest('hex');
}

describe('the example files of RFC 9639', () => {
  it.each(examples)('$name', async ({ hex, sampleRate, bits, samples }) => {
    const file = bytesOf(hex);
    const opened = await openSound(memoryBytes(file), {});
    if (!opened.ok) throw new Error(opened.fault.code);
    expect(opened).toMatchObject({ notes: [], gaps: [], source: { sampleRate } });
    const found = integers(opened.source, bits);
    expect(found.map((channel, c) => channel.slice(0, samples[c]!.length))).toEqual(samples);
    expect(signature(found, bits)).toBe(Buffer.from(file.subarray(26, 42)).toString('hex'));
  });

  it('a file whose frame has a wrong check sum is not taken for sound', async () => {
    const file = bytesOf(examples[0]!.hex);
    file[0x33]! ^= 1;
    expect(await openSound(memoryBytes(file), {})).toEqual({
      ok: false,
      fault: { code: 'coded-unreadable', facts: { kind: 'flac' } },
    });
  });
});
