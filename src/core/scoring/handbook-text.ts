import { bestWords, unitWords } from '../measures/measure-words.ts';
import { rounded, shownUnit } from '../result/figures.ts';
import {
  type HandbookEntry,
  type HandbookPoints,
  measureHandbook,
  workedOutFigures,
} from './measure-handbook.ts';

const usual = (value: number) => `${Number(value.toFixed(3))}`;

/**
 * Points of a measure in one sentence each, in the measure's unit, a probability in per cent.
 *
 * @example pointsSentences([{ rubric: 'steady', perfect: 0, secure: 5, nearly: 10, source: '' }], '%')[0]
 * // 'steady: secure up to 5 % from perfect, nearly up to 10 %; perfect is 0 %'
 */
export function pointsSentences(points: readonly HandbookPoints[], unit: string): string[] {
  const of = (value: number) => usual(unit === 'probability' ? value * 100 : value);
  return points.map(({ rubric, perfect, secure, nearly }) => {
    const best =
      typeof perfect === 'number' ? of(perfect) : `${rounded(perfect.min, 0)} to ${rounded(perfect.max, 0)}`;
    const shown = shownUnit(unit);
    return `${rubric}: secure up to ${of(secure)} ${shown} from perfect, nearly up to ${of(nearly)} ${shown}; perfect is ${best} ${shown}`;
  });
}

const listed = (head: string, items: readonly string[]) =>
  items.length === 0 ? [] : [`- **${head}:**`, ...items.map((item) => `  - ${item}`)];

function entryText(entry: HandbookEntry): string {
  const { id, name, unit, better, exportOnly, describes, formula, interval, reading, limits } = entry;
  return [
    `<a id="${id}"></a>`,
    '',
    `## ${name}`,
    '',
    `\`${id}\`, in ${unitWords[unit]}; ${bestWords[better]}.${exportOnly ? ' Written to files alone.' : ''}`,
    '',
    describes,
    '',
    `- **Formula:** \`${formula}\``,
    `- **Range:** ${interval}`,
    `- **How to read it:** ${reading}`,
    ...listed('Points', pointsSentences(entry.points, unit)),
    ...listed('Its limits', limits),
    ...listed('Instead of a figure, for example', entry.refusals),
    `- **Source:** ${entry.source}`,
  ].join('\n');
}

/** The handbook of the measures as Markdown. */
export function handbookText(): string {
  const entries = measureHandbook();
  const others = workedOutFigures();
  return `${[
    '# The measures, one by one',
    [
      'Every figure that Evenhand gives of a take, with its formula, how its range is found, how to read it and what it',
      "can't tell. A range is the one in which the true figure lies in 95 takes of 100; where it spans most of what a",
      'player could do, the take was too short for that question. Points say where a figure scores 85 (secure) and 60',
      '(nearly there); [how figures become scores](../scoring/scores.md) has the rest. `evenhand measures` shows the',
      'same in a terminal. Levels of takes made with other pads, phones or places never compare.',
    ].join('\n'),
    "SD is the standard deviation; \"least squares\" names fits in which all habits are found at once, so that one can't\npass for another. Level is a stroke's loudness in dB, its predecessor's ringing taken off.",
    entries.map(({ id, name }) => `- [${name}](#${id})`).join('\n'),
    ...entries.map(entryText),
    '## Worked out from others',
    ...others.map(
      ({ id, name, describes, points }) =>
        `\`${id}\`, ${name}: ${describes} From the accent-to-tap ratio of either hand.\n\n${listed('Points', pointsSentences(points, 'dB')).join('\n')}`,
    ),
  ].join('\n\n')}\n`;
}
