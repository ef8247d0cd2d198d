import { scoreWords } from '../core/result/names.ts';
import type { TakeResult } from '../core/result/take-result.ts';
import { shownScore } from '../core/scoring/score-curve.ts';
import { accentTurnTimes } from './accent-turn-times.ts';
import { clockTime } from './clock-time.ts';
import { gradedStrokes } from './graded-strokes.ts';
import { lanes } from './lanes.ts';
import { listWords } from './list-words.ts';
import { namedScores } from './score-overview.ts';
import { spreadOf } from './spread-of.ts';
import { decibels } from './stroke-words.ts';
import { tapsOverCeiling } from './tap-ceiling.ts';
import { whichStrokes } from './thin-out.ts';

/** What `timingHistogram` shows, with the width of each hill. */
export function timingHistogramText(result: TakeResult): string {
  const found = lanes(gradedStrokes(result), { byHand: true }).map(({ label, strokes }) => {
    const { lowerQuarter, upperQuarter } = spreadOf(strokes.map((s) => s.deviationMs))!;
    return { label, width: upperQuarter - lowerQuarter };
  });
  const byWidth = [...found].sort((a, b) => a.width - b.width);
  const [narrow, wide] = [byWidth[0]!, byWidth.at(-1)!];
  const closest = `the middle half of partial ${narrow.label} lies within ${narrow.width.toFixed(1)} ms`;
  if (byWidth.length === 1) return `A hill of strokes by how early or late they came; ${closest}.`;
  return (
    'One hill for each partial and hand: the narrower, the more alike. ' +
    `Closest together: ${closest}; widest: partial ${wide.label} with ${wide.width.toFixed(1)} ms.`
  );
}

/** What `levels` shows, with the middle levels. */
export function levelsText(result: TakeResult): string {
  const strokes = gradedStrokes(result);
  const accents = spreadOf(strokes.filter((s) => s.accent).map((s) => s.levelDb));
  const taps = spreadOf(strokes.filter((s) => !s.accent).map((s) => s.levelDb));
  const start = `${whichStrokes(strokes.length)}, by level over the take.`;
  if (accents === null || taps === null) {
    const only = (accents ?? taps)!;
    return `${start} The ${only.count} ${accents ? 'accents' : 'taps'} lie about ${decibels(only.middle)}.`;
  }
  const above = accents.middle - taps.middle;
  const where = above < 0 ? 'below' : 'above';
  const reach = spreadOf(
    strokes.filter((s) => !s.accent && s.levelDb > accents.lowest).map((s) => s.levelDb),
  );
  const overlap =
    reach === null
      ? 'No tap is as loud as the softest accent.'
      : `${reach.count} of ${taps.count} taps are louder than the softest accent.`;
  const over = tapsOverCeiling(result).length;
  const ceiling = `Above the tap ceiling: ${over} of ${taps.count} taps.`;
  return `${start} The middle accent lies ${Math.abs(above).toFixed(1)} dB ${where} the middle tap. ${overlap} ${ceiling}`;
}

/** What `tempoCurve` shows, with its ends and its reach. */
export function tempoCurveText(result: TakeResult): string {
  const { tempo, sheet } = result;
  const { lowest, highest } = spreadOf(tempo.bpm)!;
  const asked = [...new Set(sheet.lines.flatMap((line) => (line.bpm === null ? [] : [line.bpm])))];
  const wish = asked.length === 0 ? 'No tempo was asked for.' : `Asked for: ${listWords(asked.map(String))}.`;
  const [first, last] = [tempo.bpm[0]!, tempo.bpm.at(-1)!];
  const turns = accentTurnTimes(result).map((time) => clockTime(time));
  const turned = turns.length === 0 ? '' : ` The accents turn round at ${listWords(turns)}.`;
  return (
    `The tempo along the take, in beats a minute: ${first.toFixed(1)} at the start, ${last.toFixed(1)} at the end, ` +
    `between ${lowest.toFixed(1)} and ${highest.toFixed(1)}. ${wish}${turned}`
  );
}

/** What `scoreOverview` shows: every score with its word. */
export function scoreOverviewText(result: TakeResult): string {
  const parts = namedScores(result).map(
    ({ name, score }) => `${name} ${shownScore(score.score)} (${scoreWords[score.word]})`,
  );
  return `Scores out of 100, with a thin line for how sure each is: ${parts.join(', ')}.`;
}
