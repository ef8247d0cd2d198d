import { expect, it } from 'vitest';
import { likelyScore, scoreMark } from '../../src/report/score-mark.ts';

it('marks a score with its word, and where it likely lies', () => {
  expect(scoreMark(90)).toBe('<span class="mark secure">90 <span>secure</span></span>');
  expect(likelyScore({ score: 90, low: 86.4, high: 93.6, word: 'secure' })).toBe(
    `${scoreMark(90)} <span class="reason">likely 86 to 94</span>`,
  );
});
