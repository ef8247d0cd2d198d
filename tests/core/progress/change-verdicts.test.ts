import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { changeVerdicts, type Verdict } from '../../../src/core/progress/change-verdicts.ts';
import { compareDays } from '../../../src/core/progress/compare-days.ts';
import { comparedFigures } from '../../../src/core/progress/compared-figures.ts';
import { dayOf } from '../../../src/core/progress/day-number.ts';

const vectors = JSON.parse(
  readFileSync(join(import.meta.dirname, '../../../fixtures/vectors/r/check-values.json'), 'utf8'),
) as Readonly<Record<string, readonly (readonly number[])[]>>;
const figures = comparedFigures;
const spread = figures.find(({ id }) => id === 'timing-spread')!;
const ratio = figures.find(({ id }) => id === 'accent-to-tap-ratio')!;
const days = (values: readonly number[], from = 20_000) =>
  values.map((value, i) => ({ day: dayOf(from + i), value }));
const verdictOf = (figure: typeof spread, a: readonly number[], b: readonly number[]) =>
  changeVerdicts([compareDays(figure, days(a), days(b, 20_100))], figures)[0]!;

describe('a change of day medians', () => {
  it("is Welch's and the pooled test together, the larger p of the two", () => {
    // Worked out by R with fixtures/vectors/r/make.R: rows t, degrees, p of Welch's and of the pooled test.
    const [a, b] = [
      [5.2, 6.1, 4.8, 7.3, 5.9],
      [8.4, 6.6, 9.9, 7.1, 12.3, 5.8, 8.8],
    ] as const;
    const plain = { ...spread, scale: 'difference' } as const;
    const { p, change, typical } = compareDays(plain, days(a), days(b));
    expect(typical).toEqual([5.9, 8.4]);
    expect(change!.value).toBeCloseTo(8.414285714 - 5.86, 6);
    expect(change!.low).toBeGreaterThan(0);
    const [welch, pooled] = vectors['welch-and-pooled']!;
    expect(p).toBeCloseTo(Math.max(welch![2]!, pooled![2]!), 10);
  });

  it('says clearer, worse, higher or lower only where days leave no doubt', () => {
    expect(verdictOf(spread, [8, 8.2, 7.9, 8.1], [6, 6.2, 5.9, 6.1]).verdict).toBe('clearer');
    expect(verdictOf(spread, [6, 6.2, 5.9, 6.1], [8, 8.2, 7.9, 8.1]).verdict).toBe('worse');
    expect(verdictOf(ratio, [9, 9.3, 8.8, 9.1], [12, 12.2, 11.7, 12.3]).verdict).toBe('higher');
    expect(verdictOf(ratio, [12, 12.2, 11.7], [9, 9.3, 8.8]).verdict).toBe('lower');
    expect(verdictOf(spread, [8, 6, 9, 7], [7, 8, 6, 9]).verdict).toBe('no-clear-change');
  });

  it('gives a spread as a ratio', () => {
    const { change } = verdictOf(spread, [8, 8.2, 7.9], [6, 6.2, 5.9]);
    expect(change!.value).toBeCloseTo(0.75, 2);
    expect(change!.low).toBeLessThan(change!.value);
    expect(change!.high).toBeLessThan(1);
  });

  it('has no verdict under three days a side, however many takes a day has', () => {
    const many = [0, 0, 0, 1, 1, 1].map((day, i) => ({ day: dayOf(20_000 + day), value: 6 + i / 100 }));
    const [judged] = changeVerdicts([compareDays(spread, days([8, 8.2, 7.9]), many)], figures);
    expect(judged).toMatchObject({ verdict: 'too-few-days', p: null, days: [3, 2] });
    expect(judged!.change).not.toBeNull();
    expect(compareDays(spread, days([8]), many).change).toBeNull();
    expect(compareDays(spread, [], []).typical).toEqual([null, null]);
  });

  it('tells how many days would show a fifth', () => {
    const { daysForAFifth } = compareDays(spread, days([8, 8.9, 7.2, 8.4]), days([8, 7, 9.1, 8.2]));
    expect(daysForAFifth).toBeGreaterThan(3);
    expect(daysForAFifth).toBeLessThan(15);
  });
});

describe('verdicts of players in whom nothing changed', () => {
  const names: Verdict[] = ['clearer', 'worse', 'higher', 'lower'];
  const trials = 800;

  /** Day form, phone position and takes of a day vary; nothing else does. */
  function falseShare(layout: readonly [number, number], takesADay: number, heavy: boolean): number {
    const random = seeded(`days ${layout} ${takesADay} ${heavy}`);
    const wild = () => (heavy && random.uniform() < 0.1 ? 3 : 1) * random.normal();
    let wrong = 0;
    for (let trial = 0; trial < trials; trial++) {
      const side = (n: number, from: number) =>
        Array.from({ length: n }, (_, day) => {
          const form = 0.15 * wild();
          return Array.from({ length: takesADay }, () => ({
            day: dayOf(from + day),
            value: 7 * Math.exp(form + 0.08 * random.normal()),
          }));
        }).flat();
      const comparisons = figures.map((figure) =>
        compareDays(figure, side(layout[0], 20_000), side(layout[1], 20_100)),
      );
      if (changeVerdicts(comparisons, figures).some(({ verdict }) => names.includes(verdict))) wrong++;
    }
    return wrong / trials;
  }

  // 5 % and two standard errors of 800 trials.
  const most = 0.05 + 2 * Math.sqrt((0.05 * 0.95) / trials);
  it.each<[readonly [number, number], number, boolean]>([
    [[3, 3], 1, false],
    [[3, 10], 2, false],
    [[5, 5], 3, true],
    [[12, 4], 2, true],
  ])(
    'are wrong in at most one comparison of twenty over ten figures: days %j, %d takes a day, wild days %s',
    (layout, takes, heavy) => {
      expect(falseShare(layout, takes, heavy)).toBeLessThanOrEqual(most);
    },
  );

  it('but a real change is found when there are days enough', () => {
    const random = seeded('a third better');
    let found = 0;
    for (let trial = 0; trial < 200; trial++) {
      const side = (typical: number) =>
        days(Array.from({ length: 8 }, () => typical * Math.exp(0.15 * random.normal())));
      const [judged] = changeVerdicts([compareDays(spread, side(9), side(6))], figures);
      if (judged!.verdict === 'clearer') found++;
    }
    expect(found / 200).toBeGreaterThan(0.95);
  });
});
