import { expect, it } from 'vitest';
import { deviationTick } from '../../src/charts/deviation-scale.ts';
import { plainLook } from '../../src/charts/look.ts';
import { timingHistogram } from '../../src/charts/timing-histogram.ts';
import { walkingTake } from './walking-take.ts';

it('tells of a bin by its middle, whichever of its corners is pointed at', () => {
  const chart = timingHistogram(walkingTake(), plainLook)!;
  const outline = chart.data.datasets[0]!.data as unknown as { readonly x: number; readonly count: number }[];
  const label = chart.options!.plugins!.tooltip!.callbacks!.label as unknown as (item: object) => string;
  const words = (raw: object) => label({ raw, datasetIndex: 0 });
  // The outline begins and ends on the base line; between, each bin has a left and a right corner.
  const corners = outline.slice(1, -1);
  expect(corners.length).toBeGreaterThan(4);
  for (let i = 0; i < corners.length; i += 2) {
    const [left, right] = [corners[i]!, corners[i + 1]!];
    expect(words(left)).toBe(words(right));
    expect(words(left)).toMatch(
      new RegExp(`^${left.count} of .* near ${deviationTick((left.x + right.x) / 2)}$`),
    );
  }
});
