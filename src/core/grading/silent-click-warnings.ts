import { soundsAt } from '../alignment/click-places.ts';
import type { HeardClick } from '../onsets/stroke.ts';
import type { Reason } from '../result/take-result.ts';

/** With fewer strokes where the click is silent nothing is said: the end of a line may lie there (our judgement). */
const fewest = 6;

/**
 * Says where a click is heard if a take's strokes (times in s) go on without it, or begin before it.
 *
 * @example silentClickWarnings(null, []) // []
 */
export function silentClickWarnings(
  click: HeardClick | null,
  strokes: readonly { readonly time: number }[],
): readonly Reason[] {
  if (click === null) return [];
  const alone = strokes.filter(({ time }) => !soundsAt(click, time)).length;
  if (alone < fewest) return [];
  const facts = { from: click.times[0]!, to: click.times.at(-1)!, alone, strokes: strokes.length };
  return [{ code: 'click-in-part', facts }];
}
