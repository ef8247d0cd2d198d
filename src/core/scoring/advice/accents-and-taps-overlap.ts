import { figureFacts } from './figure-facts.ts';
import type { AdviceRule } from './finding.ts';
import { shortfalls } from './shortfall.ts';

/** Some taps are as loud as some accents. Facts are shares of accent-and-tap pairs, 0 … 1, in which the tap wins. */
export const accentsAndTapsOverlap: AdviceRule = (input) =>
  shortfalls(input, 'separation').map(({ outcome, lost }) => {
    const overlap = { ...outcome, value: 1 - outcome.value, low: 1 - outcome.high, high: 1 - outcome.low };
    return { code: 'accents-and-taps-overlap', facts: figureFacts(overlap), strokes: outcome.pointsAt, lost };
  });
