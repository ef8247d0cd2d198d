import type { TakeResult } from '../../src/core/result/take-result.ts';
import type { LibraryDb } from '../../src/library/library.ts';
import { comparedMeasures } from '../../src/library/line-figures.ts';
import { addPerson } from '../../src/library/people.ts';
import { lineRows, resultRow, takeRow } from '../../src/library/take-rows.ts';
import { exampleResult } from '../support/example-result.ts';

export const takes = 100_000;
export const people = 40;
export const exercises = 300;

/** One of the exercises is the catalogue's, so that an assignment can ask for it. */
export const asked = 7;
export const exerciseId = (i: number) => (i === asked ? 'triplet-2-doubles' : `exercise-${i}`);
export const hex = (number: number, length: number) =>
  (number * 2654435761 + 97).toString(16).padStart(length, '0');
export const day = (number: number) =>
  new Date(Date.UTC(2016, 0, 1) + number * 86_400_000).toISOString().slice(0, 10);

/** Takes as `keepTake` writes them, a thousand in a transaction: ten years of forty players. */
export async function fillLibrary(db: LibraryDb): Promise<void> {
  for (let i = 0; i < people; i++)
    await addPerson(db, { id: `person-${i}`, name: `Player ${i}`, role: 'student', note: '', createdAt: 0 });
  const example = exampleResult();
  // Of both lines every figure is kept, as of a take that was graded.
  const measures: TakeResult['measures'] = [
    ...example.measures,
    ...comparedMeasures.flatMap((id, at) => {
      const value = 1.23456 + at;
      const outcome = {
        state: 'measured' as const,
        value,
        low: value - 0.654321,
        high: value + 1.34567,
        strokes: 71,
        pointsAt: [],
      };
      return [0, 1].map((line) => ({ id, unit: 'ms', scope: { line }, outcome }));
    }),
  ];
  const { json, version, recordingFacts } = resultRow('', example, {});
  for (let i = 0; i < exercises; i++) {
    await db
      .insertInto('exercise')
      .values({ id: exerciseId(i), label: `Exercise ${i}`, notation: '>RLR' })
      .execute();
    const title = `Sheet ${i}`;
    await db
      .insertInto('sheet')
      .values({ id: `sheet-${i}`, title, titleKey: title.toLowerCase(), text: '>RLR', lines: 2 })
      .execute();
  }
  for (let from = 0; from < takes; from += 1000) {
    await db.transaction().execute(async (transaction) => {
      for (let i = from; i < from + 1000; i++) {
        const id = hex(i, 32);
        const lines = example.sheet.lines.map((line, place) => ({
          ...line,
          id: exerciseId((i * 7 + place * 13) % exercises),
          bpm: 60 + (i % 12) * 8,
        }));
        const result = { ...example, measures, sheet: { title: '', lines } };
        const played = {
          result,
          sheetText: '',
          audio: null,
          recordedAt: Date.UTC(2016, 0, 1) + i * 3_153_600,
          day: day(Math.floor((i * 3_153_600) / 86_400_000)),
          keptAt: 0,
          personId: `person-${(i * 31 + Math.floor(i / exercises)) % people}`,
          details: { technique: i % 3 === 0 ? 'wrist' : 'finger' },
        };
        const hash = hex(i, 64);
        await transaction.insertInto('audio').values({ hash, bytes: 2_000_000, name: 'a.wav' }).execute();
        const row = { ...takeRow(id, `sheet-${i % exercises}`, hash, played), score: (i * 37) % 100 };
        await transaction.insertInto('take').values(row).execute();
        await transaction.insertInto('takeLine').values(lineRows(row, result)).execute();
        await transaction
          .insertInto('takeResult')
          .values({ takeId: id, version, json, recordingFacts })
          .execute();
        if (i % 50 === 0)
          await transaction
            .insertInto('takeTag')
            .values({ takeId: id, tag: 'lesson', recordedAt: row.recordedAt })
            .execute();
      }
    });
  }
}
