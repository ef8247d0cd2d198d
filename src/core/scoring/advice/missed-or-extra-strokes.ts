import { measuredOutcome } from '../find-measure.ts';
import { figureFacts } from './figure-facts.ts';
import type { AdviceRule } from './finding.ts';
import { shortfalls } from './shortfall.ts';

/** Written strokes weren't heard, or more were heard than written: said of whichever is the larger share. */
export const missedOrExtraStrokes: AdviceRule = (input) =>
  shortfalls(input, 'missed-and-extra').flatMap(({ outcome, lost }) => {
    const share = (id: string) => measuredOutcome(input.measures, id)?.value ?? 0;
    const code = share('missed') >= share('extra') + share('doubled') ? 'strokes-missed' : 'strokes-extra';
    const parts = { missed: share('missed'), extra: share('extra') + share('doubled') };
    return [{ code, facts: { ...figureFacts(outcome), ...parts }, strokes: outcome.pointsAt, lost }];
  });
