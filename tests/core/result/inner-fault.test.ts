import { describe, expect, it } from 'vitest';
import { innerFault } from '../../../src/core/result/inner-fault.ts';
import type { TakeResult } from '../../../src/core/result/take-result.ts';
import { upgradeTakeResult } from '../../../src/core/result/upgrade-take-result.ts';
import { InvalidTakeResult } from '../../../src/core/result/validate-take-result.ts';
import { exampleResult } from '../../support/example-result.ts';

const example = exampleResult();
const broken = (change: (result: TakeResult) => Partial<TakeResult>) => ({ ...example, ...change(example) });

describe('innerFault', () => {
  it('finds nothing in a sound result', () => {
    expect(innerFault(example)).toBeNull();
  });

  it('reads advice on more strokes than a call takes arguments', () => {
    const strokes = new Array<number>(700_000).fill(0);
    const advice = [{ ...example.advice[0]!, strokes }];
    expect(innerFault({ ...example, advice })).toBeNull();
    const past = [{ ...example.advice[0]!, strokes: [...strokes, 99_999] }];
    expect(innerFault({ ...example, advice: past })).toMatchObject({ path: '/advice/0' });
  });

  it.each([
    [
      'a column too short',
      '/strokes/levelDb',
      broken(({ strokes }) => ({ strokes: { ...strokes, levelDb: strokes.levelDb.slice(1) } })),
    ],
    [
      "a slot that isn't there",
      '/strokes/slot/0',
      broken(({ strokes }) => ({ strokes: { ...strokes, slot: strokes.slot.map(() => 99_999) } })),
    ],
    [
      "a stroke that isn't there",
      '/slots/stroke/0',
      broken(({ slots }) => ({ slots: { ...slots, stroke: slots.stroke.map(() => 99_999) } })),
    ],
    [
      "a line that isn't there",
      '/slots/line/0',
      broken(({ slots }) => ({ slots: { ...slots, line: slots.line.map(() => 7) } })),
    ],
    [
      'a repeat past the last',
      '/slots/repeat/0',
      broken(({ slots }) => ({ slots: { ...slots, repeat: slots.repeat.map(() => 1e9) } })),
    ],
    [
      'a beat no line has',
      '/slots/beat/0',
      broken(({ slots }) => ({ slots: { ...slots, beat: slots.beat.map(() => 1e9) } })),
    ],
    [
      'strokes out of order',
      '/strokes/time/1',
      broken(({ strokes }) => ({ strokes: { ...strokes, time: strokes.time.map((t) => -t) } })),
    ],
    [
      'a segment the wrong way round',
      '/segments/0',
      broken(({ segments }) => ({
        segments: segments.map((one) => ({ ...one, firstSlot: 1, lastSlot: 0 })),
      })),
    ],
  ])('finds %s', (_, path, result) => {
    expect(innerFault(result)).toMatchObject({ path });
    expect(() => upgradeTakeResult(result)).toThrow(InvalidTakeResult);
  });
});
