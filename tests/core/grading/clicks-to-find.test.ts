import { expect, it } from 'vitest';
import { clicksToFind } from '../../../src/core/grading/clicks-to-find.ts';

const sounds = [{ kind: 'beat', times: [0, 0.5, 1] }];
const played = (times: readonly number[]) => ({ times, sounds, calibrated: false, uncertaintyMs: 0 });

it('names the clicks of a click whose tempo changes, and of no other', () => {
  expect(clicksToFind(played([0, 0.5, 0.95]))).toBe(sounds);
  expect(clicksToFind(played([0, 0.5, 1]))).toBeUndefined();
  expect(clicksToFind(played([]))).toBeUndefined();
  expect(clicksToFind(undefined)).toBeUndefined();
});

it('takes more clicks than a call takes arguments', () => {
  const steady = Array.from({ length: 700_000 }, (_, i) => i / 2);
  expect(clicksToFind(played(steady))).toBeUndefined();
  expect(clicksToFind(played([...steady, steady.at(-1)! + 0.4]))).toBe(sounds);
});
