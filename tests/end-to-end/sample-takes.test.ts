import { describe, expect, it } from 'vitest';
import { checkFigures, checkRow, checkRuns, checkStrokes, type ExpectedTake } from './expected-take.ts';
import { gradedSample, outcomeOf } from './sample-take.ts';
import { type TrueFigure, trueFigures } from './true-figures.ts';

const shows = (id: string, value: number, scope: TrueFigure['scope'] = {}): TrueFigure => ({
  id,
  scope,
  value,
});

const plain: ExpectedTake = { written: 54, matched: 54, missed: 0, runs: [[0, 53, 'graded']] };
const onTempo = [shows('tempo-error', 0), shows('tempo-change', 0), shows('hand-offset', 0)];

/** What was played, as the files of the truth have it; milliseconds, decibels, per cent. */
const takes: Readonly<Record<string, ExpectedTake>> = {
  'accent-one': { ...plain, shows: onTempo },
  'accent-two': { ...plain, shows: onTempo },
  'accent-three': { ...plain, shows: onTempo },
  'two-accents': { ...plain, shows: onTempo },
  // Partials 10 ms early and 8 ms late, told against their mean; 19 ms of jitter.
  sloppy: {
    ...plain,
    shows: [
      shows('timing-spread', 19),
      shows('placement', 2 / 3, { partial: 1 }),
      shows('placement', -10 + 2 / 3, { partial: 2 }),
      shows('placement', 8 + 2 / 3, { partial: 3 }),
    ],
  },
  'tempo-error': { ...plain, shows: [shows('tempo-error', 5), shows('tempo-change', 0)] },
  'tempo-change': { ...plain, shows: [shows('tempo-change', 9), shows('tempo-error', 0)] },
  'loud-taps': { ...plain, shows: onTempo },
  'missed-and-extra': { ...plain, matched: 50, missed: 4, extra: 3 },
  // No click and no count-in: the player's own tempo walks.
  'no-count-in': { ...plain, shows: [shows('tempo-error', 0)] },
  // The player leads with the left throughout: nothing in one take says which hand that is.
  'swapped-lead': plain,
  'dropped-partial': {
    ...plain,
    matched: 53,
    missed: 1,
    runs: [
      [0, 30, 'graded'],
      [32, 53, 'graded'],
    ],
    slip: [30, 31, 32, 33],
  },
  'restart-from-bar-5': {
    written: 72,
    matched: 72,
    missed: 0,
    abandoned: 16,
    runs: [
      [0, 47, 'graded'],
      [48, 63, 'abandoned'],
      [48, 71, 'graded'],
    ],
  },
  'third-repeat': {
    written: 48,
    matched: 48,
    missed: 0,
    surplus: 12,
    runs: [
      [0, 23, 'graded'],
      [12, 23, 'surplus'],
      [24, 47, 'graded'],
    ],
  },
  'stick-count-in': { written: 48, matched: 48, missed: 0, runs: [[0, 47, 'graded']], shows: onTempo },
  'sticks-laid-down': { written: 48, matched: 48, missed: 0, runs: [[0, 47, 'graded']], shows: onTempo },
  // A bend of -9, 0 and 4 ms before, on and after the accent, each told against all other strokes.
  demo: {
    written: 72,
    matched: 70,
    missed: 2,
    runs: [[0, 71, 'graded']],
    shows: [
      shows('tempo-error', 0),
      shows('tempo-change', 0),
      shows('accent-bend', -9 - (0 + 4) / 2, { place: 'before' }),
      shows('accent-bend', 0 - (-9 + 4) / 2, { place: 'on' }),
      shows('accent-bend', 4 - (-9 + 0) / 2, { place: 'after' }),
    ],
  },
};

const rows = Object.entries(takes);

describe.each(rows)('the take %s', (name, row) => {
  it('is what the row says', () => checkRow(name, row));
  it('has every stroke found at its time and on its slot, and no other', () => checkStrokes(name, row));
  it('falls into its runs', () => checkRuns(name, row));
  it('shows what was played', () => checkFigures(name, row));
});

describe('all sample takes', () => {
  it('hold the true habit in the interval in at least nine of ten figures', () => {
    const figures = rows
      .filter(([name]) => name !== 'two-accents') // two accents a beat: other definitions of the bend
      .flatMap(([name]) => {
        const { truth, result } = gradedSample(name);
        return trueFigures(truth).flatMap(({ id, scope, value }) => {
          const outcome = outcomeOf(result, id, scope);
          return outcome?.state === 'measured' ? [outcome.low <= value && value <= outcome.high] : [];
        });
      });
    expect(figures.length).toBeGreaterThan(90);
    expect(figures.filter(Boolean).length / figures.length).toBeGreaterThan(0.9);
  });

  it('score the practised player over the one who is all over the place', () => {
    const score = (name: string) => gradedSample(name).result.scores?.overall.score ?? Number.NaN;
    expect(score('accent-one')).toBeGreaterThan(score('sloppy') + 20);
    expect(score('accent-one')).toBeGreaterThan(score('loud-taps'));
    expect(score('accent-one')).toBeGreaterThan(score('missed-and-extra'));
  });

  it('give the fault that a take was made with as the first thing to work on', () => {
    const first = (name: string) => gradedSample(name).result.advice[0]?.code;
    expect(first('loud-taps')).toMatch(/^(taps-too-loud|accents-and-taps-overlap)$/);
    expect(first('tempo-error')).toBe('other-tempo');
    expect(first('tempo-change')).toBe('moving-tempo');
    expect(first('missed-and-extra')).toMatch(/^strokes-(missed|extra)$/);
  });
});
