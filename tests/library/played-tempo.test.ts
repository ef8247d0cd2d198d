import { expect, it } from 'vitest';
import { takeList } from '../../src/cli/library/take-list.ts';
import { exercisePlays } from '../../src/library/exercise-plays.ts';
import { keepTake } from '../../src/library/keep-take.ts';
import { listTakes } from '../../src/library/list-takes.ts';
import { readTake } from '../../src/library/read-take.ts';
import { takeConditions } from '../../src/library/take-conditions.ts';
import { exampleResult } from '../support/example-result.ts';
import { madeTake } from './made-take.ts';
import { withLibrary } from './temporary-library.ts';

/** The example, every line of which was played at 100 BPM or about it, asked for at another tempo. */
function askedAt(bpm: number) {
  const { sheet, tempo } = exampleResult();
  return {
    sheet: { ...sheet, lines: sheet.lines.map((line) => ({ ...line, bpm })) },
    tempo: { ...tempo, bpm: tempo.bpm.map((_, i) => 100 + 0.1 * (i % 3)) },
  };
}

it('a take counts, and is listed, at the tempo played where another was asked for', () =>
  withLibrary(async (library) => {
    await keepTake(library, madeTake(1, {}, askedAt(98)));
    await keepTake(library, madeTake(2, {}, askedAt(80)));
    const { takes } = await listTakes(library.db, { order: 'oldest' });
    expect(takes.map(({ tempos }) => tempos[0]!.asked)).toEqual([98, 80]);
    for (const { played } of takes[1]!.tempos) expect(played).toBeCloseTo(100, 0);

    const [head, like, unlike] = takeList(takes);
    expect(like).toMatch(/ {2}98 {2,}/);
    expect(unlike).toMatch(/ {2}100, asked 80 {2}/);
    // The head widens with its column.
    expect(unlike!.slice(head!.indexOf('exercise'))).toBe(like!.slice(head!.indexOf('exercise')));
    expect(unlike!.slice(head!.indexOf('BPM'))).toMatch(/^100, asked 80/);

    const conditions = [];
    for (const { id } of takes)
      conditions.push(takeConditions(await readTake(library.db, id)).conditions.bpm);
    expect(conditions[0]).toBe(98);
    expect(conditions[1]).toBeCloseTo(100, 0);

    const exerciseId = exampleResult().sheet.lines[0]!.id;
    const plays = await exercisePlays(library.db, { personId: null, exerciseId });
    expect(plays.map(({ bpm }) => Math.round(bpm!))).toEqual([98, 100]);
  }));
