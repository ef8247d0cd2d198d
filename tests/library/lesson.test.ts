import { expect, it } from 'vitest';
import { dayNumber, dayOf } from '../../src/core/progress/day-number.ts';
import { keepTake } from '../../src/library/keep-take.ts';
import { lessonOf, lessonsOf } from '../../src/library/lesson.ts';
import type { Library } from '../../src/library/library.ts';
import { addPerson } from '../../src/library/people.ts';
import { exampleResult } from '../support/example-result.ts';
import { madeTake } from './made-take.ts';
import { withLibrary } from './temporary-library.ts';

const today = '2026-03-20';
const since = '2026-03-13';
const scatter = [1, 1.04, 0.97, 1.02];

/** Four days before the last lesson and four since, with half of the timing spread. */
async function improved(library: Library, personId: string, from: number): Promise<void> {
  await addPerson(library.db, { id: personId, name: personId, role: 'student', note: '', createdAt: 0 });
  const { measures } = exampleResult();
  for (let i = 0; i < 8; i++) {
    const factor = (i < 4 ? 1 : 0.5) * scatter[i % 4]!;
    const played = measures.flatMap((one) => {
      if (one.id !== 'timing-spread' || one.outcome.state !== 'measured') return [one];
      const { value, low, high } = one.outcome;
      const outcome = { ...one.outcome, value: factor * value, low: factor * low, high: factor * high };
      return [one, { ...one, scope: { line: 0 }, outcome }];
    });
    const day = dayOf(dayNumber(since) - 4 + i);
    await keepTake(library, madeTake(from + i, { personId, day }, { measures: played }));
  }
}

it('corrects what is said to have changed over the whole page: of one player, or of everybody together', () =>
  withLibrary(async (library) => {
    await improved(library, 'anna', 0);
    await improved(library, 'bert', 10);
    const own = await lessonOf(library.db, { personId: 'anna', since, today });
    const all = await lessonsOf(library.db, { since, today });
    expect(all.map(({ player }) => player)).toEqual(['anna', 'bert']);
    const spreads = [own, ...all.map(({ lesson }) => lesson)].map(
      ({ exercises }) =>
        exercises
          .flatMap(({ compared }) => compared.changes)
          .find(({ figure, p }) => figure === 'timing-spread' && p !== null)!,
    );
    const asked = ({ exercises }: typeof own) =>
      exercises.flatMap(({ compared }) => compared.changes).filter(({ p }) => p !== null).length;
    const [alone, anna, bert] = spreads;
    expect(alone!.p).toBe(anna!.p);
    expect(alone!.verdict).toBe('clearer');
    // The same p-value is among twice as many questions.
    expect(asked(all[0]!.lesson) + asked(all[1]!.lesson)).toBe(2 * asked(own));
    expect(anna!.correctedP).toBeGreaterThan(1.5 * alone!.correctedP!);
    expect(anna!.correctedP).toBeCloseTo(bert!.correctedP!, 12);
  }));
