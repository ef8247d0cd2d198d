import { scoreWords } from '../../core/result/names.ts';
import { shownScore } from '../../core/scoring/score-curve.ts';
import type { ListedTake } from '../../library/listed-takes.ts';
import { padded, printable } from '../text-layout.ts';
import { localTime } from './local-day.ts';
import { shortId } from './short-id.ts';

const cut = (text: string, width: number) =>
  [...text].length > width ? `${[...text].slice(0, width - 1).join('')}…` : text;

/** What a take is called on a list: its sheet's title, else the names of its lines. */
export function takeTitle({ title, lines }: Pick<ListedTake, 'title' | 'lines'>): string {
  const named = printable(title) || printable(lines.join(', '));
  return named === '' ? 'without a title' : named;
}

const tempo = ({ bpmLow, bpmHigh, bpmPlayed }: ListedTake): string =>
  bpmLow === null || bpmHigh === null
    ? bpmPlayed === null
      ? ''
      : `~${Math.round(bpmPlayed)}`
    : bpmLow === bpmHigh
      ? `${bpmLow}`
      : `${bpmLow}–${bpmHigh}`;

/** Takes as lines of text, one a take, with a head. */
export function takeList(takes: readonly ListedTake[]): string[] {
  const head = `${'take'.padEnd(8)}  ${'played'.padEnd(16)}  ${'player'.padEnd(14)}  ${'BPM'.padEnd(7)}  score`;
  return [
    `${head}            exercise`,
    ...takes.map((take) => {
      const word = take.scoreWord === null ? 'no score' : scoreWords[take.scoreWord];
      const score = take.score === null ? '  –' : String(shownScore(take.score)).padStart(3);
      return [
        shortId(take.id),
        localTime(take.recordedAt),
        padded(cut(printable(take.personName ?? '–'), 14), 14),
        padded(tempo(take), 7),
        `${score} ${padded(word, 12)}`,
        cut(takeTitle(take), 40),
      ].join('  ');
    }),
  ];
}
