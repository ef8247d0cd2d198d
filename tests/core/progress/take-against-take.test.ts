import { describe, expect, it } from 'vitest';
import type { Conditions } from '../../../src/core/progress/conditions.ts';
import { takeAgainstTake } from '../../../src/core/progress/take-against-take.ts';
import { exampleResult } from '../../support/example-result.ts';

const conditions: Conditions = {
  exercise: 'a',
  bpm: 100,
  technique: null,
  pad: 'gum pad',
  sticks: null,
  device: 'phone',
};
const take = { result: exampleResult(), conditions };

describe('takeAgainstTake', () => {
  it('shows differences where conditions allow it, and says why not elsewhere', () => {
    const { figures, likeness } = takeAgainstTake(take, take);
    expect(likeness).toMatchObject({ timing: true, levels: false, unknown: ['technique', 'sticks'] });
    const of = (id: string) => figures.find(({ figure }) => figure.id === id)!;
    expect(of('timing-spread')).toMatchObject({ difference: 0, withheld: null });
    expect(of('accent-to-tap-ratio')).toMatchObject({ difference: null, withheld: 'other-levels' });
    const noted = { ...take, conditions: { ...conditions, sticks: 'hickory' } };
    const alike = takeAgainstTake(noted, noted);
    expect(alike.figures.find(({ figure }) => figure.id === 'accent-to-tap-ratio')).toMatchObject({
      difference: 0,
    });
  });

  it('withholds everything at another tempo', () => {
    const { figures } = takeAgainstTake(take, { ...take, conditions: { ...conditions, bpm: 120 } });
    expect(
      figures.every(({ withheld, difference }) => withheld === 'other-timing' && difference === null),
    ).toBe(true);
  });

  it('is second less first', () => {
    const looser = {
      ...exampleResult(),
      measures: exampleResult().measures.map((m) =>
        m.id === 'timing-spread' && m.outcome.state === 'measured'
          ? { ...m, outcome: { ...m.outcome, value: m.outcome.value + 2 } }
          : m,
      ),
    };
    const { figures } = takeAgainstTake(take, { result: looser, conditions });
    expect(figures.find(({ figure }) => figure.id === 'timing-spread')!.difference).toBeCloseTo(2, 9);
  });
});
