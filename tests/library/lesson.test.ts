import { describe, expect, it } from 'vitest';
import { dayNumber, dayOf } from '../../src/core/progress/day-number.ts';
import { nextWords } from '../../src/core/progress/next-words.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { keepTake } from '../../src/library/keep-take.ts';
import { lessonOf, lessonsOf } from '../../src/library/lesson.ts';
import type { Library } from '../../src/library/library.ts';
import { addPerson } from '../../src/library/people.ts';
import { playedExercises } from '../../src/library/played-exercises.ts';
import { nextTempoOf } from '../../src/library/player-progress.ts';
import { writeDiscomfort } from '../../src/library/practice.ts';
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

describe('the next tempo', () => {
  const scored = (score: number, advice: TakeResult['advice'] = []) => {
    const { scores } = exampleResult();
    const dimensions = scores!.dimensions.map((one) => ({ ...one, score: { ...one.score, score } }));
    return { scores: { ...scores!, dimensions }, advice };
  };
  const fades: TakeResult['advice'] = [{ ...exampleResult().advice[0]!, code: 'fades-at-the-end' }];
  const keep = (
    library: Library,
    number: number,
    personId: string,
    day: string,
    result: Partial<TakeResult>,
  ) =>
    keepTake(
      library,
      madeTake(number, { personId, day, recordedAt: Date.parse(`${day}T12:00:00Z`) }, result),
    );

  it('is the same on the page of one, on that of everybody, and where the whole past was read', () =>
    withLibrary(async (library) => {
      const { db } = library;
      const players = ['up', 'rest', 'long ago', 'unscored', 'hurts'];
      for (const id of players)
        await addPerson(db, { id, name: id, role: 'student', note: '', createdAt: 0 });
      await keep(library, 1, 'up', '2026-03-10', scored(92));
      await keep(library, 2, 'up', '2026-03-15', scored(92));
      await keep(library, 3, 'rest', '2026-03-15', scored(92, fades));
      // Nothing within twelve weeks has a score: where it was clean a year ago decides.
      await keep(library, 4, 'long ago', '2025-02-01', scored(92));
      await keep(library, 5, 'long ago', '2026-03-15', { scores: null, advice: [] });
      await keep(library, 6, 'unscored', '2026-03-15', { scores: null, advice: [] });
      await keep(library, 7, 'hurts', '2026-03-15', scored(92));
      await writeDiscomfort(db, { id: 'n', personId: 'hurts', day: '2026-03-16', text: 'left wrist' });
      const all = await lessonsOf(db, { since, today });
      const found: Record<string, string> = {};
      for (const personId of players) {
        const own = await lessonOf(db, { personId, since, today });
        const theirs = all.find(({ player }) => player === personId)!.lesson;
        expect(own.exercises.length).toBeGreaterThan(0);
        for (const [i, { next }] of own.exercises.entries()) {
          expect(theirs.exercises[i]!.next).toEqual(next);
          const exerciseId = (await playedExercises(db, personId, since))[i]!.id;
          expect((await nextTempoOf(db, { personId, today, exerciseId }))!.next).toEqual(next);
        }
        found[personId] = nextWords(own.exercises[0]!.next);
      }
      expect(found).toEqual({
        up: 'up to 104–106 BPM',
        rest: '100 BPM after a rest, in shorter takes',
        'long ago': 'start at 85–90 BPM',
        unscored: 'start at 85–90 BPM',
        hurts: 'none while discomfort is noted',
      });
    }));

  it('reads from the result whether the end gave way where an older program kept the take', () =>
    withLibrary(async (library) => {
      const { db } = library;
      await addPerson(db, { id: 'anna', name: 'anna', role: 'student', note: '', createdAt: 0 });
      await keep(library, 1, 'anna', '2026-03-15', scored(92, fades));
      const next = async () =>
        (await lessonOf(db, { personId: 'anna', since, today })).exercises.map((one) => one.next.code);
      const kept = await next();
      expect(new Set(kept)).toEqual(new Set(['tempo-after-rest']));
      await db.updateTable('take').set({ endGaveWay: null }).execute();
      expect(await next()).toEqual(kept);
      await db.updateTable('take').set({ endGaveWay: 0 }).execute();
      expect(new Set(await next())).toEqual(new Set(['tempo-needs-second-day']));
    }));
});
