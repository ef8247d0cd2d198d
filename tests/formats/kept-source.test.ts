import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Source } from '../../src/core/signal/source.ts';
import { keptSource, mostKept } from '../../src/formats/kept-source.ts';
import { memoryBytes } from '../../src/formats/memory-bytes.ts';
import { riffLayout } from '../../src/formats/riff-layout.ts';
import { wavSource } from '../../src/formats/wav-source.ts';
import { writeWav } from '../../src/formats/write-wav.ts';

function stereo(): Source {
  const channels = [3, 7].map((step) => Float32Array.from({ length: 50 }, (_, i) => ((i * step) % 11) / 16));
  const bytes = memoryBytes(writeWav({ channels, sampleRate: 8000, depth: 'int16' }));
  const outcome = riffLayout(bytes);
  if (!outcome.ok) throw new Error(outcome.fault.code);
  return wavSource(bytes, outcome.layout);
}

describe('keptSource', () => {
  it('reads what the file reads, also past either end', () => {
    const file = stereo();
    const kept = keptSource(file);
    const place = fc.integer({ min: -80, max: 130 });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1 }), place, place, (channel, from, to) => {
        expect(kept.read(channel, from, to)).toEqual(file.read(channel, from, to));
      }),
    );
  });

  it('gives samples that the caller may change', () => {
    const kept = keptSource(stereo());
    kept.read(0, 0, 50).fill(9);
    expect(kept.read(0, 0, 50)).toEqual(stereo().read(0, 0, 50));
  });

  it('asks the file once, and each time where it is too long', () => {
    const counted = (length: number) => {
      let reads = 0;
      const file: Source = {
        sampleRate: 8000,
        channels: 1,
        length,
        read: (_, from, to) => {
          reads++;
          return new Float32Array(to - from);
        },
      };
      const kept = keptSource(file);
      for (let i = 0; i < 3; i++) kept.read(0, i, i + 10);
      return reads;
    };
    expect(counted(1000)).toBe(1);
    expect(counted(mostKept + 1)).toBe(3);
  });

  it('refuses a channel that is not there, as the file does', () => {
    expect(() => keptSource(stereo()).read(2, 0, 1)).toThrow(RangeError);
  });
});
