import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { filterChoices } from '../../src/library/filter-choices.ts';
import { keepTake } from '../../src/library/keep-take.ts';
import type { Library } from '../../src/library/library.ts';
import { listSheets } from '../../src/library/list-sheets.ts';
import { countTakes, listTakes, type PageKey, type TakeOrder } from '../../src/library/list-takes.ts';
import type { ListedTake } from '../../src/library/listed-takes.ts';
import { addPerson } from '../../src/library/people.ts';
import type { TakeFilter } from '../../src/library/take-filter.ts';
import { madeTake, sheetText } from './made-take.ts';
import { withLibrary } from './temporary-library.ts';

const day = (number: number) => madeTake(number).day;

/** Thirty takes over ten days: two players and none, two sheets, three tempos, tags, techniques, some without score. */
async function fill(library: Library): Promise<void> {
  for (const id of ['anke', 'bo'])
    await addPerson(library.db, { id, name: id, role: 'student', note: '', createdAt: 0 });
  for (let i = 0; i < 30; i++) {
    const made = madeTake(i % 10);
    const { sheet, scores } = made.result;
    const accentOne = i % 2 === 0;
    const bpm = 80 + 10 * (i % 3);
    const lines = sheet.lines.map((line) => ({ ...(accentOne ? sheet.lines[0]! : line), bpm }));
    const overall = { ...scores!.overall, score: (i * 37) % 100 };
    const result = {
      ...made.result,
      sheet: { title: accentOne ? 'Off the beat' : 'Both accents', lines },
      scores: i % 5 === 0 ? null : { ...scores!, overall },
    };
    await keepTake(library, {
      ...made,
      result,
      sheetText: accentOne ? 'title: Off the beat\n\n>RLR >LRL\n>RLR >LRL\n' : sheetText,
      audio: { name: 'a.wav', bytes: Uint8Array.of(i) },
      personId: [null, 'anke', 'bo'][i % 3]!,
      details: { technique: i % 4 === 0 ? 'wrist' : '' },
      tags: i % 6 === 0 ? ['lesson'] : [],
    });
  }
}

async function everyPage(library: Library, filter: TakeFilter, order: TakeOrder, limit: number) {
  const takes: ListedTake[] = [];
  let after: PageKey | null = null;
  let pages = 0;
  do {
    const page: Awaited<ReturnType<typeof listTakes>> = await listTakes(library.db, {
      filter,
      order,
      limit,
      after,
    });
    takes.push(...page.takes);
    after = page.next;
    pages++;
  } while (after !== null);
  expect(pages).toBe(Math.max(1, Math.ceil(takes.length / limit)));
  return takes;
}

/** What a filter means, said once more in plain terms. */
function passes(take: ListedTake, filter: TakeFilter): boolean {
  const { personId, exerciseId, fromDay, toDay, fromBpm, toBpm, tag, technique, title, graded } = filter;
  const names = { 'accent-1-hand-to-hand': 'Accent on 1', 'accent-2-hand-to-hand': 'Accent on 2' };
  const name = exerciseId === undefined ? '' : (names[exerciseId as keyof typeof names] ?? 'no such');
  return (
    (personId === undefined || take.personId === personId) &&
    take.lines.some((line) => line.includes(name)) &&
    (fromDay === undefined || take.day >= fromDay) &&
    (toDay === undefined || take.day <= toDay) &&
    (fromBpm === undefined || (take.bpmHigh !== null && take.bpmHigh >= fromBpm)) &&
    (toBpm === undefined || (take.bpmLow !== null && take.bpmLow <= toBpm)) &&
    (tag === undefined || take.tags.includes(tag)) &&
    (technique === undefined || take.technique === technique) &&
    (title === undefined || take.title.toLowerCase().includes(title.toLowerCase())) &&
    (graded === undefined || take.graded === graded)
  );
}

describe('listTakes', () => {
  it('gives every take once, in order, whatever the filter, order and size of page', () =>
    withLibrary(async (library) => {
      await fill(library);
      const all = await everyPage(library, {}, 'newest', 200);
      expect(all).toHaveLength(30);
      const orNot = <T>(values: T[]) => fc.constantFrom<T | undefined>(undefined, undefined, ...values);
      const filters = fc.record({
        personId: orNot<string | null>(['anke', null]),
        exerciseId: orNot(['accent-1-hand-to-hand', 'accent-2-hand-to-hand', 'unknown']),
        fromDay: orNot([day(3)]),
        toDay: orNot([day(7)]),
        fromBpm: orNot([90]),
        toBpm: orNot([90]),
        tag: orNot(['lesson']),
        technique: orNot(['wrist']),
        title: orNot(['BEAT']),
        graded: orNot([true]),
      });
      const orders = fc.constantFrom<TakeOrder>('newest', 'oldest', 'cleanest');
      await fc.assert(
        fc.asyncProperty(filters, orders, fc.integer({ min: 1, max: 12 }), async (filter, order, limit) => {
          const found = await everyPage(library, filter, order, limit);
          const wanted = all.filter(
            (take) => passes(take, filter) && (order !== 'cleanest' || take.score !== null),
          );
          expect(found.map(({ id }) => id).sort()).toEqual(wanted.map(({ id }) => id).sort());
          if (order !== 'cleanest') expect(await countTakes(library.db, filter)).toBe(wanted.length);
          const key = (take: ListedTake) =>
            order === 'cleanest' ? -take.score! : order === 'newest' ? -take.recordedAt : take.recordedAt;
          for (let i = 1; i < found.length; i++)
            expect(key(found[i - 1]!)).toBeLessThanOrEqual(key(found[i]!));
        }),
        { numRuns: 150 },
      );
    }));

  it('goes on after a take that was deleted meanwhile', () =>
    withLibrary(async (library) => {
      await fill(library);
      const first = await listTakes(library.db, { limit: 10 });
      await library.db.deleteFrom('take').where('id', '=', first.next!.id).execute();
      const second = await listTakes(library.db, { limit: 30, after: first.next });
      expect(second.takes).toHaveLength(20);
    }));
});

it('filterChoices and listSheets name what there is', () =>
  withLibrary(async (library) => {
    expect(await filterChoices(library.db)).toEqual({ exercises: [], tags: [], techniques: [] });
    await fill(library);
    const { exercises, tags, techniques } = await filterChoices(library.db);
    expect(exercises.map(({ label }) => label)).toEqual([
      'Accent on 1, hand-to-hand',
      'Accent on 2, hand-to-hand',
    ]);
    expect([tags, techniques]).toEqual([['lesson'], ['wrist']]);
    const sheets = await listSheets(library.db);
    expect(sheets.map(({ title, lines }) => [title, lines])).toEqual([
      ['Both accents', 2],
      ['Off the beat', 2],
    ]);
  }));
