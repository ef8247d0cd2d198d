import { expect, it } from 'vitest';
import { sheetId, takeId } from '../../src/library/content-ids.ts';

const take = { recording: 'ab'.repeat(32), sheetText: '>RLR', part: null };

it('a take has one id, wherever and whenever it is worked out', async () => {
  const id = await takeId(take);
  expect(id).toMatch(/^[0-9a-f]{32}$/);
  expect(await takeId({ ...take })).toBe(id);
});

it('another recording, sheet or part is another take', async () => {
  const others = [
    take,
    { ...take, recording: 'cd'.repeat(32) },
    { ...take, sheetText: '>RLR\n' },
    { ...take, part: { from: 0, to: 10 } },
    { ...take, part: { from: 0, to: 10.5 } },
  ];
  expect(new Set(await Promise.all(others.map(takeId))).size).toBe(others.length);
});

it('a sheet is known by its text, and never taken for a take', async () => {
  expect(await sheetId('>RLR')).toBe(await sheetId('>RLR'));
  expect(await sheetId('>RLR')).not.toBe(await sheetId('R>LR'));
});
