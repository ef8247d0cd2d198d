import { expect, it } from 'vitest';
import type { ListedTake } from '../../../src/library/listed-takes.ts';
import { exportParts } from '../../../src/page/library/export-parts.ts';

const take = (id: string, audioBytes: number | null, title = 'Off the beat: Übung №3') =>
  ({ id, audioBytes, title, lines: [], day: '2026-03-09' }) as unknown as ListedTake;

it('names one take by its day and what was played', () => {
  expect(exportParts([take('a', 10)], '2026-04-01')).toEqual([
    { name: '2026-03-09-off-the-beat-ubung-no3.take.zip', ids: ['a'] },
  ]);
  expect(exportParts([take('a', null, '///')], '2026-04-01')[0]?.name).toBe('2026-03-09-take.take.zip');
});

it('shares many out over as many files as they need, in order, none left out', () => {
  const takes = [take('a', 60), take('b', 50), take('c', null), take('d', 40), take('e', 500), take('f', 1)];
  expect(exportParts(takes, '2026-04-01', 100)).toEqual([
    { name: 'takes-2026-04-01-part-1-of-4.take.zip', ids: ['a'] },
    { name: 'takes-2026-04-01-part-2-of-4.take.zip', ids: ['b', 'c', 'd'] },
    { name: 'takes-2026-04-01-part-3-of-4.take.zip', ids: ['e'] },
    { name: 'takes-2026-04-01-part-4-of-4.take.zip', ids: ['f'] },
  ]);
  expect(exportParts(takes.slice(0, 2), '2026-04-01', 200)[0]?.name).toBe('takes-2026-04-01.take.zip');
  expect(exportParts([], '2026-04-01')).toEqual([]);
});
