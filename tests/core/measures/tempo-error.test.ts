import { describe, expect, it } from 'vitest';
import { tempoError } from '../../../src/core/measures/tempo-error.ts';
import { coverage, coverageBounds, figureOf, outcomeOf } from './coverage.ts';
import { machine, players, simulatedPerformance } from './simulated-performance.ts';

const sheet = 'tempo: 111.111\n>RLR >LRL >RLR >LRL; x12';

describe('tempo-error', () => {
  it('of a machine that plays 2 % slower is 1/1.02 − 1', () => {
    const take = simulatedPerformance({ sheet, seed: 1, player: machine, timeSe: 0, slower: 1.02 });
    expect(figureOf(tempoError, take).value).toBeCloseTo(100 * (1 / 1.02 - 1), 6);
  });

  it('sees through lines at different tempos', () => {
    const two = 'tempo: 90\n>RLR >LRL; x16\n>RLR >LRL; x16; tempo: 130';
    const take = simulatedPerformance({ sheet: two, seed: 1, player: machine, timeSe: 0, slower: 0.99 });
    expect(figureOf(tempoError, take).value).toBeCloseTo(100 * (1 / 0.99 - 1), 4);
  });

  it('does not exist where no tempo is asked for', () => {
    const take = simulatedPerformance({ sheet, seed: 1, player: machine });
    const open = {
      ...take,
      sheet: { ...take.sheet, lines: take.sheet.lines.map((line) => ({ ...line, bpm: null })) },
    };
    expect(outcomeOf(tempoError, open)).toEqual({
      state: 'not-applicable',
      reason: { code: 'no-tempo-asked', facts: {} },
    });
  });

  // A slow corrector's memory is hard to tell from drift: its coverage is a little low at this length.
  it.each(['independent jitter', 'middling corrector', 'no click'])(
    'of the %s at tempo holds zero',
    (name) => {
      const runs = 300;
      const play = (seed: number) => simulatedPerformance({ sheet, seed, player: players[name]! });
      const { share, mean } = coverage(runs, play, 0, tempoError);
      expect(Math.abs(mean)).toBeLessThan(0.05);
      expect(share).toBeGreaterThan(coverageBounds(runs).least);
    },
  );
});
