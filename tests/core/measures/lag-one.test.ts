import { describe, expect, it } from 'vitest';
import { measures } from '../../../src/core/measures/index.ts';
import { lagOne } from '../../../src/core/measures/lag-one.ts';
import { isForExport } from '../../../src/core/result/names.ts';
import { coverage, coverageBounds } from './coverage.ts';
import { type Player, players, simulatedPerformance } from './simulated-performance.ts';

const play = (player: Player) => (seed: number) =>
  simulatedPerformance({ sheet: 'tempo: 110\n>RLR >LRL; x48', seed, player });

describe('lag-one', () => {
  // Theory: differences of independent deviations correlate by −1/2; a clock of 4 ms with movements of 4 ms gives
  // −motor²/(clock² + 2 motor²) = −1/3 (Wing & Kristofferson 1973).
  it.each([
    ['independent jitter', -1 / 2],
    ['no click', -1 / 3],
  ] as const)('of the %s comes near theory, and its interval holds it', (name, theory) => {
    const runs = 200;
    const { share, mean } = coverage(runs, play(players[name]!), theory, lagOne);
    expect(Math.abs(mean - theory)).toBeLessThan(0.02);
    expect(share).toBeGreaterThan(coverageBounds(runs).least);
  });

  it('is for files alone, as every measure marked so', () => {
    expect(measures.filter((m) => m.exportOnly).map((m) => m.id)).toEqual(
      measures.filter((m) => isForExport(m.id)).map((m) => m.id),
    );
    expect(isForExport('lag-one')).toBe(true);
  });
});
