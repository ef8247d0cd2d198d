import { takeTime } from '../../core/result/figures.ts';
import { dimensionName, scoreWords } from '../../core/result/names.ts';
import { sentence } from '../../core/result/sentences.ts';
import { shownScore } from '../../core/scoring/score-curve.ts';
import { countsInWords } from '../../report/folder/counts-in-words.ts';
import type { FolderResult, FolderTake, TakeFigures } from '../../report/folder/folder-result.ts';
import type { Screen } from '../screen.ts';
import { careLine, hanging, padded, printable, type Styles, textStyles, wrapped } from '../text-layout.ts';

/** Columns of a take's first line, in characters: the recording's name takes what is left. */
const scoreWidth = 17;
const timeWidth = 6;

/**
 * What became of a folder's recordings as text for a terminal: each with its exercise, its scores in words and what to
 * look at first; then those that couldn't be graded, each with its reason. Text from outside is stripped of control
 * characters.
 *
 * @example folderText(result, { color: false, width: 80 })
 */
export function folderText(result: FolderResult, { color, width }: Screen): string {
  const styles = textStyles(color);
  const shown = result.takes.filter(({ figures }) => figures !== null);
  const unread = result.takes.filter(({ figures }) => figures === null);
  const section = (title: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : [styles.strong(title), ...lines, ''];
  return [
    ...section(
      'Takes',
      shown.flatMap((take) => takeLines(take, width, styles)),
    ),
    ...section(
      'Not graded',
      unread.flatMap(({ recording, fault }) => {
        // The fault names the file without its folder.
        const place = recording.includes('/') ? `${recording}: ` : '';
        return hanging('  ', printable(`${place}${fault ?? ''}`), width);
      }),
    ),
    ...wrapped(countsInWords(result.counts), width),
    '',
    ...careLine(width),
    '',
  ].join('\n');
}

function takeLines({ recording, figures }: FolderTake, width: number, styles: Styles): string[] {
  const { exercise, duration, overall, noGrade, attention } = figures!;
  const score =
    overall !== null
      ? `${padded(String(shownScore(overall.score)), 3, 'end')} ${scoreWords[overall.word]}`
      : noGrade === null
        ? '  – no score'
        : '  – no grade';
  const nameWidth = Math.max(12, width - 2 - scoreWidth - timeWidth - 2);
  const names = wrapped(printable(recording), nameWidth);
  const first = `  ${styles.strong(padded(names[0] ?? '', nameWidth))} ${padded(takeTime(duration).replace(/\.\d$/, ''), timeWidth, 'end')} ${styles.figure(score)}`;
  const below = [
    printable(exercise),
    ...(noGrade === null ? [] : [sentence(noGrade)]),
    weakDimensions(figures!),
    attention[0]?.sentence ?? '',
  ].filter((text) => text !== '');
  return [
    first,
    ...names.slice(1).map((part) => `  ${part}`),
    ...below.flatMap((text) => hanging('    ', text, width)),
  ];
}

/** The dimensions that aren't secure, by their words. */
function weakDimensions({ dimensions }: TakeFigures): string {
  const named = (['not-yet', 'nearly'] as const).flatMap((word) => {
    const names = dimensions.filter(({ score }) => score.word === word).map(({ id }) => dimensionName(id));
    return names.length === 0 ? [] : [`${scoreWords[word]}: ${names.join(', ')}`];
  });
  return named.join('; ');
}
