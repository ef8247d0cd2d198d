import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bandLayout } from '../../../src/core/signal/band-layout.ts';

describe('the layout of bands', () => {
  it('splits 48 kHz into octaves down to 1.5 kHz', () => {
    const { preHalvings, workRate, bands } = bandLayout(48_000);
    expect({ preHalvings, workRate }).toEqual({ preHalvings: 0, workRate: 48_000 });
    expect(bands).toEqual([
      { lowHz: 12_000, highHz: 24_000 },
      { lowHz: 6000, highHz: 12_000 },
      { lowHz: 3000, highHz: 6000 },
      { lowHz: 1500, highHz: 3000 },
      { lowHz: 0, highHz: 1500 },
    ]);
  });

  it.each([8000, 11_025, 16_000, 22_050, 24_000, 32_000, 44_100, 48_000, 88_200, 96_000, 176_400, 192_000])(
    'suits %i Hz',
    (sampleRate) => checkLayout(sampleRate),
  );

  it('suits every rate between them', () => {
    fc.assert(fc.property(fc.integer({ min: 8000, max: 192_000 }), checkLayout));
  });

  it('works on 96 and 192 kHz as on 48 kHz', () => {
    const plain = bandLayout(48_000);
    for (const preHalvings of [1, 2]) {
      expect(bandLayout(48_000 * 2 ** preHalvings)).toEqual({ ...plain, preHalvings });
    }
  });
});

function checkLayout(sampleRate: number) {
  const { preHalvings, workRate, stages, hop, frameRate, bands } = bandLayout(sampleRate);
  expect(workRate * 2 ** preHalvings).toBe(sampleRate);
  expect(workRate).toBeLessThan(88_000);
  expect(bands).toHaveLength(stages + 1);
  // Bands join without a gap, from half the rate down to nothing, the lowest up to about 1.5 kHz.
  expect(bands[0]!.highHz).toBe(workRate / 2);
  expect(bands.at(-1)!.lowHz).toBe(0);
  for (let band = 1; band < bands.length; band++) expect(bands[band]!.highHz).toBe(bands[band - 1]!.lowHz);
  expect(bands.at(-1)!.highHz).toBeGreaterThan(1000);
  expect(bands.at(-1)!.highHz).toBeLessThan(2200);
  // A frame holds whole samples of every band and lasts about a millisecond.
  expect(hop % 2 ** stages).toBe(0);
  expect(1000 / frameRate).toBeGreaterThan(0.65);
  expect(1000 / frameRate).toBeLessThan(1.5);
  expect(frameRate).toBeCloseTo(workRate / hop, 9);
}
