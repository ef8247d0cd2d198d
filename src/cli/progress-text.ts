import { comparedFigures } from '../core/progress/compared-figures.ts';
import type { Conditions } from '../core/progress/conditions.ts';
import type { ExerciseProgress } from '../core/progress/exercise-progress.ts';
import type { GuessRecord } from '../core/progress/guess-record.ts';
import { guessWords } from '../core/progress/guess-words.ts';
import type { PeriodsCompared } from '../core/progress/periods-compared.ts';
import {
  changeText,
  figureText,
  stillNeeded,
  trendWord,
  verdictWords,
} from '../core/progress/progress-words.ts';
import { counted, rounded } from '../core/result/figures.ts';
import { measureName } from '../core/result/names.ts';
import { sentence } from '../core/result/sentences.ts';
import { shownScore } from '../core/scoring/score-curve.ts';
import { hanging, padded, printable } from './text-layout.ts';

const width = 88;

/** What the figures speak of. */
function likeWords({ bpm, technique, pad, sticks, device }: Conditions): string {
  const words = [bpm === null ? '' : `about ${rounded(bpm, 0)} BPM`, technique, pad, sticks, device];
  return words.flatMap((word) => (word === null || word === '' ? [] : [printable(word)])).join(', ');
}

/** Progress in one exercise as lines of text. */
export function progressText(progress: ExerciseProgress): string[] {
  const { plays, days, like, figures, cleanest, cleanestTempo, next } = progress;
  if (like === null) return ['Nothing of this exercise is kept yet.'];
  const rows = figures
    .filter((one) => one.days.length > 0)
    .map(({ figure, trend, days: medians }) => {
      const typical = medians.at(-1)!.median;
      const change = trend.perWeek === null ? '' : changeText(trend.perWeek.value, figure);
      const range =
        trend.perWeek === null
          ? ''
          : `(${changeText(trend.perWeek.low, figure)} to ${changeText(trend.perWeek.high, figure)})`;
      return [measureName(figure.id), figureText(typical, figure), change, range, trendWord(trend, figure)];
    });
  const out = [
    `${counted(plays, 'time')} on ${counted(days, 'day')}. The figures speak of: ${likeWords(like)}.`,
    '',
    ...table([['', 'last day', 'a week', '', ''], ...rows]),
  ];
  const left = figures.filter((one) => one.leftOut > 0 && one.days.length === 0);
  if (left.length > 0)
    out.push(
      '',
      ...hanging(
        '',
        `Not compared, as pad, sticks or device differ or weren't noted: ${left.map(({ figure }) => measureName(figure.id).toLowerCase()).join(', ')}.`,
        width,
      ),
    );
  out.push('');
  if (cleanest.length > 0)
    out.push(
      `Cleanest takes: ${cleanest.map(({ takeId, score, day }) => `${takeId.slice(0, 8)} (${shownScore(score)}, ${day})`).join(', ')}`,
    );
  if (cleanestTempo !== null)
    out.push(
      `Cleanest tempo: ${rounded(cleanestTempo.bpm, 0)} BPM, secure on ${cleanestTempo.days === 1 ? 'one day' : `${cleanestTempo.days} days`}.`,
    );
  return [...out, ...hanging('Next: ', sentence(next), width)];
}

/** How well a player guesses his takes as lines of text. */
export function guessText(records: readonly GuessRecord[]): string[] {
  return ['How well the guesses fit', ...records.flatMap((one) => hanging('  - ', guessWords(one), width))];
}

/** Two stretches of days held against each other as lines of text. */
export function periodsText({ changes, like, leftOut }: PeriodsCompared, fromDay: string): string[] {
  if (like === null) return ['Nothing of this exercise is kept yet.'];
  const shown = changes.filter(({ typical }) => typical[0] !== null || typical[1] !== null);
  const of = (id: string) => comparedFigures.find((figure) => figure.id === id)!;
  const rows = shown.map((one) => {
    const figure = of(one.figure);
    const [before, after] = one.typical.map((value) => (value === null ? '–' : figureText(value, figure)));
    const { change } = one;
    return [
      measureName(figure.id),
      before!,
      after!,
      change === null ? '' : changeText(change.value, figure),
      change === null ? '' : `(${changeText(change.low, figure)} to ${changeText(change.high, figure)})`,
      verdictWords[one.verdict],
    ];
  });
  const most = shown[0];
  const days = most === undefined ? '' : `${most.days[0]} days before, ${most.days[1]} from then on. `;
  const needed = new Map<string, string[]>();
  for (const one of shown) {
    const text = stillNeeded(one);
    if (text !== '') needed.set(text, [...(needed.get(text) ?? []), measureName(one.figure)]);
  }
  return [
    `Before ${fromDay} and from then on. ${days}The figures speak of: ${likeWords(like)}.`,
    ...(leftOut > 0 ? [`${leftOut} left out, at another tempo or technique.`] : []),
    '',
    ...table([['', 'before', 'after', 'change', '', ''], ...rows]),
    '',
    ...[...needed].flatMap(([text, names]) =>
      hanging('', names.length === shown.length ? text : `${names.join('; ')}: ${text}`, width),
    ),
    ...hanging(
      '',
      'Days are compared, not takes; all figures together are wrong in fewer than one comparison of twenty.',
      width,
    ),
  ];
}

/** Columns under each other. */
export function table(rows: readonly (readonly string[])[]): string[] {
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => [...row[i]!].length)));
  return rows.map((row) =>
    row
      .map((cell, i) => padded(cell, widths[i]!, i === 0 ? 'start' : 'end'))
      .join('  ')
      .trimEnd(),
  );
}
