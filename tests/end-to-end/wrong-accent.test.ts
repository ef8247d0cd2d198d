import { describe, expect, it } from 'vitest';
import { practisedPlayer } from '../../fixtures/generator/player.ts';
import { readSheet } from '../../fixtures/generator/read-sheet.ts';
import { renderTake } from '../../fixtures/generator/render-take.ts';
import { plainTake, type TakeSpec } from '../../fixtures/generator/take-spec.ts';
import { gradeTake } from '../../src/core/grade-take.ts';
import { sentence } from '../../src/core/result/sentences.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { floatSource } from '../support/float-source.ts';

const click: TakeSpec['click'] = {
  kind: 'woodblock',
  levelDb: -20,
  countInBeats: 4,
  throughout: true,
  bellEvery: 4,
  band: null,
};

/** A take of one line, graded against another. */
function graded(played: string, against: string, change: Partial<TakeSpec> = {}, seed = 1): TakeResult {
  const { slots } = readSheet(`tempo: 100\n${played} ; times: 8`);
  const { samples, sampleRate } = renderTake({
    ...plainTake,
    bpm: 100,
    slots,
    seed,
    player: practisedPlayer,
    ...change,
  });
  return gradeTake(floatSource(sampleRate, samples), readSheet(`${against} ; times: 8`).sheet);
}

const turnedShare = ({ measures }: TakeResult) => {
  const found = measures.find(({ id, scope }) => id === 'turned-accents' && Object.keys(scope).length === 0);
  return found?.outcome.state === 'measured' ? found.outcome.value : null;
};
const unmatched = ({ strokes }: TakeResult) => strokes.role.filter((role) => role !== 'matched').length;
const missing = ({ slots }: TakeResult) => slots.state.filter((state) => state !== 'played').length;

const third = 'RL>R LR>L';
const second = 'R>LR L>RL';
const first = '>RLR >LRL';

describe('a line played with its accents on another partial', () => {
  it.each([
    [third, second, 3, 2],
    [third, first, 3, 1],
    [first, second, 1, 2],
    [first, third, 1, 3],
    ['>RRL >RRL', 'R>RL R>RL', 1, 2],
  ])(
    'says so, %s played as %s, with a click, without one and at an open tempo',
    (asked, played, writtenOn, heardOn) => {
      for (const result of [
        graded(played, `tempo: 100\n${asked}`, { click }),
        graded(played, `tempo: 100\n${asked}`),
        graded(played, asked),
      ]) {
        expect(turnedShare(result)).toBe(100);
        expect([missing(result), unmatched(result)]).toEqual([0, 0]);
        const [advice] = result.advice;
        expect(advice).toMatchObject({
          code: 'accents-off-from-start',
          facts: { writtenPartial: writtenOn, playedPartial: heardOn },
        });
        expect(advice!.strokes).toEqual([0]);
        expect(sentence(advice!)).toContain(
          `accents are heard on partial ${heardOn}, where partial ${writtenOn} is written`,
        );
      }
    },
  );

  it('says so where the take breaks off, with a click to tell the beat', () => {
    const slots = readSheet(`tempo: 100\n${second} ; times: 5`).slots;
    const result = graded(second, `tempo: 100\n${first}`, { click, slots });
    expect(turnedShare(result)!).toBeGreaterThan(95);
    expect(result.advice[0]!.code).toBe('accents-off-from-start');
  });

  it('scores the dynamics for what they are against the line', () => {
    const dynamics = graded(second, `tempo: 100\n${third}`).scores!.dimensions.find(
      ({ id }) => id === 'dynamics',
    );
    expect(dynamics!.score.word).toBe('not-yet');
  });
});

describe('a line played as written', () => {
  it.each([first, second, third])('%s has no turned accents, stroke missing or not', (line) => {
    for (const seed of [1, 2, 3]) {
      const whole = graded(line, `tempo: 100\n${line}`, {}, seed);
      expect(turnedShare(whole)).toBe(0);
      const { slots } = readSheet(`tempo: 100\n${line} ; times: 8`);
      // The first stroke is left out; a last one is left out; one in the middle is.
      for (const left of [0, 47, 22]) {
        const result = graded(
          line,
          `tempo: 100\n${line}`,
          { slots: slots.filter((_, i) => i !== left) },
          seed,
        );
        expect(turnedShare(result)).toBe(0);
        expect(missing(result)).toBe(1);
      }
    }
  });
});
