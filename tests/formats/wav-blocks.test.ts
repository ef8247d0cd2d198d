import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wavBlocks } from '../../src/formats/wav-blocks.ts';
import { writeWav } from '../../src/formats/write-wav.ts';

describe('wavBlocks', () => {
  it('gives the bytes of the whole file, however it is cut', () => {
    const sample = fc.float({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.array(sample, { maxLength: 9 }), { maxLength: 5 }),
        fc.constantFrom('int16' as const, 'int24' as const),
        (cut, depth) => {
          const whole = Float32Array.from(cut.flat());
          const blocks = cut.map((block) => Float32Array.from(block));
          const written = [...wavBlocks({ blocks, frames: whole.length, sampleRate: 44_100, depth })];
          expect(written.flatMap((bytes) => [...bytes])).toEqual([
            ...writeWav({ channels: [whole], sampleRate: 44_100, depth }),
          ]);
        },
      ),
    );
  });

  it('refuses what no wave file holds', () => {
    const long = { blocks: [], frames: 2 ** 31, sampleRate: 48_000, depth: 'int16' } as const;
    expect(() => [...wavBlocks(long)]).toThrow(RangeError);
  });
});
