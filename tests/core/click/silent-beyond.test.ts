import { describe, expect, it } from 'vitest';
import { silentBeyond } from '../../../src/core/click/silent-beyond.ts';
import { renderedClicks } from '../../support/rendered-clicks.ts';

const seeds = [7311, 7312, 7313] as const;

describe('silentBeyond', () => {
  it.each(seeds)('tells that a click which only counts in is silent under the strokes (seed %i)', (seed) => {
    const { source, found } = renderedClicks('click-count-in-only', seed);
    expect(silentBeyond(source, found!).after).toBe(true);
  });

  it.each(seeds)('a click that sounds to the end is silent nowhere behind it (seed %i)', (seed) => {
    for (const name of ['click-10', 'click-20-bell', 'click-30', 'click-small-speaker'] as const) {
      const { source, found, truth } = renderedClicks(name, seed);
      const early = { ...found!, times: found!.times.slice(0, 6) };
      expect(silentBeyond(source, early).after).toBe(false);
      const late = { ...found!, times: found!.times.slice(-6) };
      expect(silentBeyond(source, late).before).toBe(false);
      expect(truth.clicks.length).toBeGreaterThan(12);
    }
  });
});
