import type { Slot } from '../../src/core/exercise/slot.ts';
import { measures } from '../../src/core/measures/index.ts';
import type { MeasureResult, Scope } from '../../src/core/result/take-result.ts';
import { handRatioGap } from '../../src/core/scoring/hand-ratio-gap.ts';
import { normalCdf } from '../../src/core/stats/normal-cdf.ts';
import { type Player, simulatedPerformance } from '../core/measures/simulated-performance.ts';
import { longRunSpread } from './long-run-spread.ts';

/** One question asked of simulated takes. */
export interface Row {
  readonly name: string;
  readonly id: string;
  readonly scope: Scope;
  /** What the player was made with; `own` where only the measure's own mean over many takes tells. */
  readonly truth: ((player: Player, faults: boolean) => number) | 'own';
}

/** A line with the same habits and the rows that only it can tell. */
export interface RowSet {
  readonly notation: string;
  readonly strokes: number;
  readonly rows: readonly Row[];
}

const places = [0, -0.005, 0.004];
const meanPlace = places.reduce((sum, place) => sum + place, 0) / places.length;
const handApart = 0.004;
export const levelSd = 1.5;
const ratioDb = 12;
const tapsAllowedDb = 8;
export const faultShares = { missedShare: 0.01, strayShare: 0.005 };
const habit = ({ partial, hand }: Slot) =>
  places[partial - 1]! + (hand === 'L' ? handApart / 2 : -handApart / 2);

const value = (truth: number) => () => truth;
const row = (name: string, id: string, scope: Scope, truth: Row['truth']): Row => ({
  name,
  id,
  scope,
  truth,
});

/** Doubles in it, so that the hands stay told after a missed stroke. */
const plain: RowSet = {
  notation: '>RLR >RLR >LRL >LRL',
  strokes: 12,
  rows: [
    row('timing spread', 'timing-spread', {}, longRunSpread),
    ...[2, 3].map((partial) =>
      row(
        `place of partial ${partial}`,
        'placement',
        { partial },
        value((places[partial - 1]! - meanPlace) * 1000),
      ),
    ),
    row('left against right', 'hand-offset', {}, value(handApart * 1000)),
    row('gap at a change of hands', 'hand-change-gap', {}, value(0)),
    row('against the click', 'offset', {}, value(meanPlace * 1000)),
    row('slow wander', 'wander', {}, 'own'),
    row('inner beat', 'clock-spread', {}, ({ clock }) => clock * 1000),
    row('movement', 'motor-spread', {}, ({ motor }) => motor * 1000),
    row('tempo against the one asked', 'tempo-error', {}, value(0)),
    row('tempo from start to end', 'tempo-change', {}, value(0)),
    row('timing spread from start to end', 'timing-spread-trend', {}, value(0)),
    row('unevenness of intervals', 'ioi-evenness', {}, 'own'),
    row('pairs of intervals (nPVI)', 'npvi', {}, 'own'),
    row('correlation of neighbours', 'lag-one', {}, 'own'),
    row('accent-to-tap ratio', 'accent-to-tap-ratio', {}, value(ratioDb)),
    row('the same, right hand', 'accent-to-tap-ratio', { hand: 'R' }, value(ratioDb)),
    row('ratio, right hand over left', 'hand-ratio-gap', {}, value(0)),
    row('accent beats tap', 'separation', {}, value(normalCdf(ratioDb / levelSd / Math.SQRT2))),
    row(
      'taps too near the accents',
      'tap-ceiling',
      {},
      value(100 * normalCdf((tapsAllowedDb - ratioDb) / levelSd)),
    ),
    row('spread of taps', 'tap-spread', {}, value(levelSd)),
    row('spread of accents', 'accent-spread', {}, value(levelSd)),
    row("right hand's accents against all", 'accent-match', { partial: 1, hand: 'R' }, value(0)),
    row('taps after accents', 'after-accent-leak', {}, value(0)),
    row('left level over right', 'hand-level', {}, value(0)),
    row('taps from start to end', 'tap-level-trend', {}, value(0)),
    row('ratio from start to end', 'ratio-trend', {}, value(0)),
    row('missed', 'missed', {}, (_, faults) => (faults ? 100 * faultShares.missedShare : 0)),
  ],
};

/** Accents on every partial, in pairs, and taps in a row. */
const moving: RowSet = {
  notation: '>RRL >LLR R>RL L>LR >R>RL >L>LR RRR LLL',
  strokes: 24,
  rows: [
    ...(['before', 'on', 'after'] as const).map((place) =>
      row(`${place} an accent`, 'accent-bend', { place }, value(0)),
    ),
    row('second accent of two', 'second-accent', {}, value(0)),
    row('taps in a row', 'rebound-decay', {}, value(0)),
    row('taps before accents', 'before-accent-lift', {}, value(0)),
  ],
};

export const rowSets: readonly RowSet[] = [plain, moving];

/** Takes of a cell, and for each of its rows how they came out. */
export interface Tally {
  readonly row: Row;
  readonly told: number;
  /** Share of those told whose interval holds the truth. */
  readonly held: number;
  readonly meanHalf: number;
}

/** Grades `takes` simulated takes of a player with the seeds from `firstSeed` on. */
export function tallies(
  set: RowSet,
  player: Player,
  cell: {
    readonly strokes: number;
    readonly faults: boolean;
    readonly takes: number;
    readonly firstSeed: number;
  },
): Tally[] {
  const { strokes, faults, takes, firstSeed } = cell;
  const used = measures.filter(
    ({ id }) => id === 'accent-to-tap-ratio' || set.rows.some((one) => one.id === id),
  );
  const intervals = set.rows.map(() => [] as { value: number; low: number; high: number }[]);
  for (let k = 0; k < takes; k++) {
    const take = simulatedPerformance({
      sheet: `tempo: 111.111\n${set.notation}; x${strokes / set.strokes}`,
      seed: firstSeed + k,
      player,
      habit,
      levelMemory: 0.3,
      ...(faults ? faultShares : {}),
    });
    const measured: MeasureResult[] = used.flatMap((measure) => measure.compute(take));
    const results = [...measured, handRatioGap(measured, take.hands)];
    set.rows.forEach(({ id, scope }, r) => {
      const wanted = JSON.stringify(scope);
      const outcome = results.find((one) => one.id === id && JSON.stringify(one.scope) === wanted)?.outcome;
      if (outcome?.state === 'measured') intervals[r]!.push(outcome);
    });
  }
  return set.rows.map((one, r) => {
    const own = intervals[r]!;
    const told = own.length;
    const mean = (of: (interval: (typeof own)[number]) => number) =>
      own.reduce((sum, interval) => sum + of(interval), 0) / told;
    const ownTruth = one.id === 'wander' ? Math.sqrt(mean((i) => i.value ** 2)) : mean((i) => i.value);
    const truth = one.truth === 'own' ? ownTruth : one.truth(player, faults);
    const held = own.filter(({ low, high }) => low <= truth && truth <= high).length / told;
    return { row: one, told, held, meanHalf: mean(({ low, high }) => (high - low) / 2) };
  });
}
