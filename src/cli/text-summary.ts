import { counted, rounded, takeTime } from '../core/result/figures.ts';
import { dimensionName, scoreWords } from '../core/result/names.ts';
import { findingSentence, sentence } from '../core/result/sentences.ts';
import type { Score, TakeResult } from '../core/result/take-result.ts';
import { shownScore } from '../core/scoring/score-curve.ts';
import { isTempoAdvice } from '../core/scoring/tempo-advice.ts';
import { extent } from '../core/stats/extent.ts';
import { breakingRows } from './breaking-rows.ts';
import { measureTable } from './measure-table.ts';
import { modelTable } from './model-table.ts';
import type { Screen } from './screen.ts';
import { careLine, hanging, padded, printable, type Styles, textStyles, wrapped } from './text-layout.ts';

const references: Readonly<Record<TakeResult['reference']['kind'], string>> = {
  'played-click': 'the click played while recording',
  'heard-click': 'the click heard in the recording',
  'asked-tempo': 'the tempo asked for',
  'fitted-tempo': 'the tempo found in the take',
};

/** Runs whose tempos differ by less are shown with one tempo, BPM. */
const alikeBpm = 0.5;

/** Said where the check of the recording found nothing. */
const nothingFound = 'Checked: nothing stands in the way of the figures.';

/** What was found in the recording. */
function heard({ strokes, slots, segments, reference, hands }: TakeResult): string[] {
  const role = (name: string) => strokes.role.filter((r) => r === name).length;
  const state = (name: string) => slots.state.filter((s) => s === name).length;
  const bpms = segments.filter((s) => s.state === 'graded').map((s) => s.bpm);
  const { least: slowest, most: fastest } = extent(bpms);
  const alike = fastest - slowest < alikeBpm;
  const tempos = alike ? rounded((slowest + fastest) / 2) : `${rounded(slowest)} to ${rounded(fastest)}`;
  const facts = [
    `${counted(strokes.time.length, 'stroke')} heard for ${slots.line.length} written`,
    ...(state('missed') ? [`${state('missed')} missed`] : []),
    ...(role('extra') ? [`${role('extra')} extra`] : []),
    ...(role('doubled') ? [`${role('doubled')} doubled`] : []),
    ...(state('not-reached') ? [`${state('not-reached')} not reached`] : []),
    ...(role('abandoned') ? [`${role('abandoned')} in runs given up (shown, not graded)`] : []),
    ...(role('outside') ? [`${role('outside')} outside the lines`] : []),
  ];
  if (bpms.length === 0) return [`${facts.join(', ')}.`];
  const basis = `At ${tempos} BPM, held against ${references[reference.kind]}.`;
  const handNote = hands === 'not-told' ? ['Right and left could not be told apart.'] : [];
  return [`${facts.join(', ')}.`, basis, ...handNote];
}

/** A score as ten steps, beside its number and word. */
const steps = (score: number) => '■'.repeat(Math.round(score / 10)).padEnd(10, '·');

const range = ({ low, high }: Score) => `${rounded(low, 0)} to ${rounded(high, 0)}`;

function scoreRows(scores: NonNullable<TakeResult['scores']>, width: number, styles: Styles): string[] {
  const row = (name: string, score: Score) =>
    [
      `  ${padded(name, 20)}`,
      styles.figure(padded(`${shownScore(score.score)}`, 3, 'end')),
      ...(width < 64 ? [] : [steps(score.score)]),
      padded(scoreWords[score.word], 12),
      styles.faint(range(score)),
    ].join('  ');
  return [row('Overall', scores.overall), ...scores.dimensions.map((d) => row(dimensionName(d.id), d.score))];
}

/** What to work on, numbered when there is more than one thing, with the places to listen to. */
function workOn({ advice, strokes }: TakeResult, width: number): string[] {
  const items = advice.filter((item) => !isTempoAdvice(item.code));
  const mark = (i: number) => (items.length === 1 ? '  ' : `  ${i + 1}. `);
  return items.flatMap((item, i) => {
    const times = [
      ...new Set(item.strokes.map((index) => strokes.time[index]).filter((t) => t !== undefined)),
    ];
    const listen = times.toSorted((a, b) => a - b).map(takeTime);
    const indent = ' '.repeat(mark(i).length);
    return [
      ...hanging(mark(i), sentence(item), width),
      ...(listen.length > 0 ? hanging(indent, `Listen at ${listen.join(', ')}`, width) : []),
    ];
  });
}

/**
 * A take's result as text for a terminal: what was heard, scores with their words, measures with intervals, what to
 * work on with times in the take, the next tempo, what the take can't tell. Looks its best from 80 columns, keeps
 * within 56. Text from outside is stripped of control characters. A take without a grade shows why and what to do.
 *
 * @example textSummary(result, { color: false, width: 80 })
 */
export function textSummary(result: TakeResult, { color, width }: Screen): string {
  const styles = textStyles(color);
  const { scores, grading, warnings } = result;
  const section = (title: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : ['', styles.strong(title), ...lines];
  const list = (items: TakeResult['warnings']) =>
    items.flatMap((item) => hanging('  - ', sentence(item), width));
  const paragraphs = (texts: readonly string[]) => texts.flatMap((text) => hanging('  ', text, width));
  const head = [
    ...wrapped(printable(result.sheet.title) || 'Untitled sheet', width).map(styles.strong),
    ...wrapped(printable(result.recording.name), width).map(styles.faint),
    ...section('Heard', paragraphs(heard(result))),
  ];
  const { check } = result.recording;
  const recording = section('The recording', [
    ...list(warnings),
    ...(check ?? []).flatMap((finding) => hanging('  - ', findingSentence(finding), width)),
    ...(check?.length === 0 ? paragraphs([nothingFound]) : []),
  ]);
  const foot = ['', ...careLine(width)];
  if (grading.state === 'not-gradable')
    return [
      ...head,
      ...section('No grade', paragraphs([sentence(grading.reason)])),
      ...recording,
      ...foot,
      '',
    ].join('\n');
  const tempo = result.advice.filter((item) => isTempoAdvice(item.code)).map((item) => sentence(item));
  const scored = scores
    ? section(
        `Scores (rubric: ${printable(scores.rubric)}; 95 % range last)`,
        scoreRows(scores, width, styles),
      )
    : [];
  return [
    ...head,
    ...scored,
    ...section('Work on first', workOn(result, width)),
    ...section('Next tempo', paragraphs(tempo)),
    ...section('Breaking point (BPM, 95 % range)', breakingRows(result, width, styles)),
    ...section('Measures (value, 95 % range)', measureTable(result, width, styles)),
    ...(result.model
      ? section('Against the model (difference, 95 % range)', modelTable(result.model, width, styles))
      : []),
    ...recording,
    ...section("This take can't tell", list(result.cannotTell)),
    ...foot,
    '',
  ].join('\n');
}
