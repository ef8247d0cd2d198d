import { layOut } from '../../src/core/exercise/lay-out.ts';
import { parseSheet } from '../../src/core/exercise/parse-sheet.ts';
import type { Slot } from '../../src/core/exercise/slot.ts';
import { turnedAccentsFound } from '../../src/core/grading/turned-accents-found.ts';
import { measureTake } from '../../src/core/measures/index.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { adviceRules } from '../../src/core/scoring/advice/index.ts';
import { handRatioGap } from '../../src/core/scoring/hand-ratio-gap.ts';
import { steady } from '../../src/core/scoring/rubrics/steady.ts';
import { type Player, simulatedPerformance, type Take } from '../core/measures/simulated-performance.ts';
import { longRunSpread } from './long-run-spread.ts';

/** Accents move and hands double, so that hand, partial and accent can all be told apart. */
export const tellingLine = '>RLR L>RL LR>L RLR >LRL R>LR RL>R LRL';
export const tellingSheet = (repeats: number) => `tempo: 111.111\n${tellingLine}; x${repeats}`;
const partialMs = 180;

/** Codes of all that the rules of advice find in a take, before the first three are chosen. */
export function findingsOf(take: Take): string[] {
  const performance = simulatedPerformance(take);
  const measured = measureTake(performance);
  const measures: TakeResult['measures'] = [...measured, handRatioGap(measured, performance.hands)];
  const input = {
    measures,
    lines: [{ ratioBand: null }],
    rubric: steady,
    turns: turnedAccentsFound(performance),
  };
  return adviceRules.flatMap((rule) => rule(input)).map(({ code }) => code);
}

/** A player without habits, whose scatter, levels and tempo are all within what counts as secure. */
export const withoutFault = (player: Player): Omit<Take, 'sheet' | 'seed'> => ({
  player,
  levelSd: () => 1.2,
});

/**
 * A player who is just secure in everything the rubric scores: timing spread 5 % of a partial, a partial 3 % late, strokes
 * after an accent 3 % late, left 2 % after right, ratio 7 dB, 1.5 dB less of it in the left hand than in the right, levels
 * that scatter by 1.5 dB, one stroke in 200 missed; without a click also a tempo 1 % slow and 1 % slower at the end.
 */
export function justSecure(player: Player, repeats: number): Omit<Take, 'sheet' | 'seed'> {
  const parsed = parseSheet(tellingSheet(repeats));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const slots = layOut(parsed.sheet);
  const follows = new Set(slots.filter((_, i) => slots[i - 1]?.accent).map(({ index }) => index));
  const louder = (0.05 * partialMs) / longRunSpread(player);
  const late = (slot: Slot) =>
    (slot.partial === 1 ? 0.045 : 0) +
    (follows.has(slot.index) ? 0.03 : 0) +
    (slot.hand === 'L' ? 0.01 : -0.01);
  return {
    player: { ...player, clock: player.clock * louder, motor: player.motor * louder },
    habit: (slot) => (late(slot) * partialMs) / 1000,
    level: ({ accent, hand }) => (accent ? -23 : -30 + (hand === 'L' ? 0.75 : -0.75)),
    ...(player.selfPaced ? { slower: 1.01, slowing: 0.01 } : {}),
    missedShare: 0.005,
  };
}
