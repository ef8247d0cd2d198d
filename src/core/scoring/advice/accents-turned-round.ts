import { measuredOutcome } from '../find-measure.ts';
import type { AdviceRule } from './finding.ts';

/** Points a turned beat counts for at least: the exercise played is another one. Our judgement. */
const leastLost = 20;

/** The accents as a whole lie on another partial from some beat on; said of the first such beat. */
export const accentsTurnedRound: AdviceRule = ({ measures, lines, turns = [] }) => {
  const [first] = turns;
  if (!first) return [];
  const share = measuredOutcome(measures, 'turned-accents')?.value ?? 0;
  const { line, repeat, bar, beat, by } = first;
  return [
    {
      code: 'accents-turned-round',
      facts: {
        ...(lines.length > 1 ? { line } : {}),
        repeat,
        bar,
        beat,
        by: Math.abs(by),
        direction: by < 0 ? 'early' : 'late',
        times: turns.length,
      },
      strokes: turns.map(({ stroke }) => stroke),
      lost: Math.max(leastLost, share),
    },
  ];
};
