import { expect, it } from 'vitest';
import type { Outcome } from '../../../src/core/result/take-result.ts';
import { wanderInWords } from '../../../src/page/result/silent-wander.ts';
import { exampleResult } from '../../support/example-result.ts';

const words = (outcome: Outcome) =>
  wanderInWords({ ...exampleResult(), measures: [{ id: 'silent-wander', unit: 'ms', scope: {}, outcome }] });
const figure = (value: number, low: number, high: number) =>
  words({ state: 'measured', value, low, high, strokes: 90, pointsAt: [] });

it('a wander in silence is put in words by where its range lies', () => {
  expect(figure(3.24, 1, 5.4)).toBe('Without the click each beat came 3.2 ms later (likely 1.0 to 5.4).');
  expect(figure(-3.24, -5.4, -1)).toBe('Without the click each beat came 3.2 ms sooner (likely 1.0 to 5.4).');
  expect(figure(0.4, -2, 2.8)).toBe(
    'Without the click the beat leaned neither way for sure: 0.4 ms a beat, likely −2.0 to 2.8; minus is sooner.',
  );
});

it('of too few silences it says what they gave, and of none it says nothing', () => {
  const facts = { silences: 1, needed: 3, beats: 4, msPerBeat: -2 };
  expect(words({ state: 'not-measurable', reason: { code: 'too-few-silences', facts } })).toBe(
    'In the one silence of this take, 4 beats, each beat came 2.0 ms sooner than the one before. It takes 3 silences to say how sure that is: play longer, or with more bars left silent.',
  );
  expect(words({ state: 'not-applicable', reason: { code: 'click-never-silent', facts: {} } })).toBeNull();
  expect(wanderInWords(exampleResult())).toBeNull();
});
