import { expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { comparedFigures } from '../../../src/core/progress/compared-figures.ts';
import { dayOf } from '../../../src/core/progress/day-number.ts';
import type { ExercisePlay } from '../../../src/core/progress/exercise-progress.ts';
import { exercisesCompared, realChanges } from '../../../src/core/progress/periods-compared.ts';

const conditions = { exercise: 'a', bpm: 92, technique: 'w', pad: 'p', sticks: 's', device: 'd' };

/** Playings on days before and after day 0, every figure with its day's form and its take's. */
function plays(random: ReturnType<typeof seeded>, better = 0): ExercisePlay[] {
  return [-9, -7, -6, -4, -2, 0, 1, 3, 5].flatMap((day) => {
    const form = comparedFigures.map(() => 0.15 * random.normal());
    return [0, 1].map((take) => ({
      takeId: `${day} ${take}`,
      day: dayOf(20_000 + day),
      conditions,
      bpm: 92,
      figures: Object.fromEntries(
        comparedFigures.map(({ id }, i) => {
          const value = 5 * Math.exp(form[i]! + 0.1 * random.normal() - (day >= 0 ? better : 0));
          return [id, { value, low: value, high: value, strokes: 50 }];
        }),
      ),
      take: null,
      score: null,
    }));
  });
}

it('claims a change in fewer than one lesson of twenty where none was, whatever the number of exercises', () => {
  const runs = 300;
  let claimed = 0;
  for (let seed = 1; seed <= runs; seed++) {
    const random = seeded(seed);
    const exercises = [plays(random), plays(random), plays(random), plays(random)];
    const compared = exercisesCompared(exercises, dayOf(20_000));
    if (compared.some((one) => realChanges(one).length > 0)) claimed++;
  }
  // 5 % of 300 are 15; two standard errors of a share of 5 % more.
  expect(claimed).toBeLessThanOrEqual(15 + 8);
});

it('finds one that is large in the exercise that has it', () => {
  const random = seeded(5);
  const [still, moved] = exercisesCompared([plays(random), plays(random, 1)], dayOf(20_000));
  expect(realChanges(still!)).toEqual([]);
  expect(realChanges(moved!).map(({ figure, verdict }) => [figure, verdict])).toContainEqual([
    'timing-spread',
    'clearer',
  ]);
  expect(moved!.changes).toHaveLength(comparedFigures.length);
});
