import { describe, expect, it } from 'vitest';
import { hearStrokes } from '../../src/core/onsets/hear-strokes.ts';
import { openedSample } from '../support/opened-sample.ts';
import { checkFigures, checkRow, checkRuns, checkStrokes, type ExpectedTake } from './expected-take.ts';
import { gradedSample, gradedStrokes, nearestStroke } from './sample-take.ts';

const tempo = (id: string) => ({ id, scope: {}, value: 0 });
const takes: Readonly<Record<string, ExpectedTake>> = {
  'talk-and-noodling-first': {
    written: 48,
    matched: 48,
    missed: 0,
    outside: 9,
    runs: [[0, 47, 'graded']],
    shows: [tempo('tempo-error'), tempo('tempo-change')],
  },
};
describe.each(Object.entries(takes))('the take %s', (name, row) => {
  it('is what the row says', () => checkRow(name, row));
  it('has every stroke found at its time and on its slot, and no other', () => checkStrokes(name, row));
  it('falls into its runs', () => checkRuns(name, row));
  it('shows what was played', () => checkFigures(name, row));
});

describe('a recording without strokes', () => {
  const steady = (f: (i: number) => number) => {
    const length = 66150;
    return {
      sampleRate: 22050,
      channels: 1,
      length,
      read: (_: number, from: number, to: number) =>
        Float32Array.from({ length: to - from }, (_, i) =>
          from + i < 0 || from + i >= length ? 0 : f(from + i),
        ),
    };
  };
  it.each([
    ['a hum', (i: number) => 0.2 * Math.cos((2 * Math.PI * 50 * i) / 22050)],
    ['a steady level', () => 0.5],
  ])('has none at its edges: %s', (_, f) => expect(hearStrokes(steady(f)).sounds).toEqual([]));
});

describe('a count-in with the sticks', () => {
  it('is heard and named, and nothing of the room becomes a stroke', () => {
    const { truth } = gradedSample('stick-count-in');
    const { sounds } = hearStrokes(openedSample('stick-count-in').source);
    for (const { time, kind } of truth.otherSounds) {
      const heard = sounds.find((sound) => Math.abs(sound.time - time) < 0.005);
      expect(heard?.sound, `${kind} at ${time} s`).toBe(kind);
    }
    expect(sounds.filter(({ sound }) => sound === 'pad')).toHaveLength(truth.strokes.length);
  });
});

describe('taps in the wire tail of a recorded snare', () => {
  it('are nearly all found and on their slots, and none is invented', () => {
    const { truth, result } = gradedSample('recorded-snare');
    const { strokes } = result;
    const graded = gradedStrokes(truth);
    const right = graded.filter(({ time, slot }) => {
      const found = nearestStroke(result, time);
      return Math.abs(strokes.time[found]! - time) < 0.01 && strokes.slot[found] === slot;
    });
    expect(right.length).toBeGreaterThanOrEqual(0.95 * graded.length);
    const invented = strokes.time.filter(
      (time) => !graded.some((stroke) => Math.abs(stroke.time - time) < 0.01),
    );
    expect(invented).toEqual([]);
  });
});
