import { measuredOutcome } from '../find-measure.ts';
import type { AdviceRule } from './finding.ts';

/** Points a turned beat counts for at least: the exercise played is another one. Our judgement. */
const leastLost = 20;

/** The accents as a whole lie on another partial, from the start or from some beat on; said of the first such beat. */
export const accentsTurnedRound: AdviceRule = ({ measures, lines, turns = [] }) => {
  const [first] = turns;
  if (!first) return [];
  const share = measuredOutcome(measures, 'turned-accents')?.value ?? 0;
  const { line, repeat, bar, beat, by, fromStart, writtenPartial, playedPartial } = first;
  return [
    {
      code: fromStart ? 'accents-off-from-start' : 'accents-turned-round',
      facts: {
        ...(lines.length > 1 ? { line } : {}),
        ...(fromStart ? {} : { repeat, bar, beat }),
        by: Math.abs(by),
        direction: by < 0 ? 'early' : 'late',
        ...(writtenPartial === null || playedPartial === null ? {} : { writtenPartial, playedPartial }),
        times: turns.length,
      },
      strokes: turns.map(({ stroke }) => stroke),
      lost: Math.max(leastLost, share),
    },
  ];
};
