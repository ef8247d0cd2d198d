import { describe, expect, it } from 'vitest';
import type { Reference } from '../../../src/core/alignment/reference-time.ts';
import { measures, measureTake } from '../../../src/core/measures/index.ts';
import { offset } from '../../../src/core/measures/offset.ts';
import { coverage, coverageBounds, figureOf, outcomeOf } from './coverage.ts';
import { machine, type Player, players, simulatedPerformance, type Take } from './simulated-performance.ts';

const play = (player: Player, repeats: number, seed: number, rest: Partial<Take> = {}) =>
  simulatedPerformance({
    sheet: `tempo: 111.111\n>RLR >LRL >RLR >LRL; x${repeats}`,
    seed,
    player,
    // Hands and partials differ; over all strokes the habit is −12 ms.
    habit: (slot) => -0.012 + (slot.hand === 'L' ? 0.003 : -0.003) + [0, -0.004, 0.004][slot.partial - 1]!,
    ...rest,
  });

const onClick = Object.entries(players).filter(([, player]) => !player.selfPaced);

describe('offset', () => {
  it('of a machine that plays 12 ms ahead is −12 ms', () => {
    expect(figureOf(offset, play(machine, 8, 1, { timeSe: 0 })).value).toBeCloseTo(-12, 6);
  });

  it.each(onClick)('of the %s is met and its interval holds it', (_, player) => {
    const runs = 200;
    const { share, mean } = coverage(runs, (seed) => play(player, 12, seed), -12, offset);
    expect(Math.abs(mean + 12)).toBeLessThan(0.7);
    expect(share).toBeGreaterThan(coverageBounds(runs).least);
  });

  it.each(['asked-tempo', 'fitted-tempo'] as const)('does not exist against an %s', (reference) => {
    const take = play(players['slow corrector']!, 12, 1, { reference });
    expect(outcomeOf(offset, take)).toEqual({
      state: 'not-applicable',
      reason: { code: 'needs-a-click', facts: {} },
    });
  });

  it('cannot be worked out from a reference without a click: the type has no asynchronies', () => {
    const fitted: Reference = { kind: 'asked-tempo' };
    // @ts-expect-error only a click gives asynchronies
    expect(fitted.asynchrony).toBeUndefined();
    // @ts-expect-error a tempo can't be given any
    const wrong: Reference = { kind: 'fitted-tempo', asynchrony: new Map() };
    expect(wrong.kind).toBe('fitted-tempo');
  });
});

describe('measures without a click', () => {
  it.each(['asked-tempo', 'fitted-tempo'] as const)(
    'give no figure that moves with the offset: %s',
    (reference) => {
      const early = play(players['quick corrector']!, 12, 3, { reference });
      const later = play(players['quick corrector']!, 12, 3, { reference, habit: () => 0.03 });
      const laterAgain = play(players['quick corrector']!, 12, 3, { reference, habit: () => -0.03 });
      expect(measureTake(early).length).toBe(measureTake(later).length);
      const figures = (take: typeof later) =>
        measureTake(take).flatMap(({ id, scope, outcome }) =>
          outcome.state === 'measured' ? [[id, JSON.stringify(scope), outcome.value] as const] : [],
        );
      const other = figures(laterAgain);
      figures(later).forEach(([id, scope, value], i) => {
        expect([other[i]![0], other[i]![1]]).toEqual([id, scope]);
        expect(other[i]![2], id).toBeCloseTo(value, 4);
      });
    },
  );

  it('speak of ahead or behind in the one that needs a click, and nowhere else', () => {
    const speaking = measures.filter((m) => /\bahead\b|\bbehind\b/i.test(`${m.title} ${m.describes}`));
    expect(speaking.map((m) => m.id)).toEqual(['offset']);
  });
});
