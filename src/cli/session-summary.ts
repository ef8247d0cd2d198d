import { otherTempoWords } from '../core/progress/other-tempo-words.ts';
import { takeTime } from '../core/result/figures.ts';
import { scoreWords } from '../core/result/names.ts';
import { sentence } from '../core/result/sentences.ts';
import { shownScore, wordOfScore } from '../core/scoring/score-curve.ts';
import { lineName } from '../core/session/line-name.ts';
import type { LineOfSession, SessionResult } from '../core/session/session-result.ts';
import type { Screen } from './screen.ts';
import { careLine, hanging, printable, textStyles, wrapped } from './text-layout.ts';

const times = (n: number) => (n === 1 ? 'once' : n === 2 ? 'twice' : `${n} times`);
const shown = (score: number) => `${shownScore(score)} (${scoreWords[wordOfScore(score)]})`;

function lineText({ line, plays, score, repeats, asked }: LineOfSession, session: SessionResult): string {
  const label = printable(lineName(session.sheet.lines, line));
  if (plays.length === 0) return `${label}: not played.`;
  const worth = score === null ? 'too few strokes for a score' : `score ${shown(score)}`;
  const runs = plays.length === 1 ? '' : ` in ${plays.length} goes`;
  const broke = plays.flatMap(({ take, brokeFrom }) =>
    brokeFrom === null
      ? []
      : [` It broke from time ${brokeFrom + 1} on, in the take at ${takeTime(session.takes[take]!.from)}.`],
  );
  return `${label}: played ${times(repeats)}${runs} (asked: ${times(asked)}), ${worth}.${broke.join('')}`;
}

/**
 * A session as text for a terminal: what became of each line, then its takes with their place in the recording. Text
 * from outside is stripped of control characters.
 *
 * @example sessionSummary(result, { color: false, width: 80 })
 */
export function sessionSummary(session: SessionResult, { color, width }: Screen): string {
  const styles = textStyles(color);
  const { takes, summary, sheet, recording, unrecognised } = session;
  const label = (line: number) => printable(lineName(sheet.lines, line));
  const takeRows = takes.map(({ line, repeats, from, to, result }) => {
    const score = result.scores?.overall.score;
    const tempo = otherTempoWords(result);
    const worth =
      score !== undefined
        ? `score ${shown(score)}`
        : result.grading.state === 'not-gradable'
          ? sentence(result.grading.reason)
          : 'too few strokes for a score';
    return `${takeTime(from)} to ${takeTime(to)}: ${[label(line), times(repeats), tempo, worth].filter(Boolean).join(', ')}`;
  });
  const weakest =
    summary.weakest === null ? [] : ['', ...wrapped(`Weakest line: ${label(summary.weakest)}.`, width)];
  const rows = (texts: readonly string[]) => texts.flatMap((text) => hanging('  ', text, width));
  const foreign = unrecognised.map(({ from, to }) => `${takeTime(from)} to ${takeTime(to)}`);
  return [
    ...wrapped(printable(sheet.title) || 'Untitled sheet', width).map(styles.strong),
    ...wrapped(printable(recording.name), width).map(styles.faint),
    '',
    styles.strong('Lines'),
    ...rows(summary.lines.map((line) => lineText(line, session))),
    ...weakest,
    '',
    styles.strong('Takes'),
    ...rows(takes.length > 0 ? takeRows : ['No line of the sheet was found in this recording.']),
    ...(foreign.length > 0
      ? ['', styles.strong('Playing that fits no line of the sheet'), ...rows([`${foreign.join(', ')}.`])]
      : []),
    '',
    ...careLine(width),
    '',
  ].join('\n');
}
