import { scoreWords } from '../../core/result/names.ts';
import { shownScore } from '../../core/scoring/score-curve.ts';
import type { ListedTake } from '../../library/listed-takes.ts';
import { listedTempo } from '../../library/listed-tempo.ts';
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

function tempoText(take: ListedTake): string {
  const tempo = listedTempo(take);
  if (tempo === null) return '';
  const words = ([low, high]: readonly [number, number]) => (low === high ? `${low}` : `${low}–${high}`);
  const asked = tempo.asked === null ? '' : `, asked ${words(tempo.asked)}`;
  return `${tempo.isOpen ? '~' : ''}${words(tempo.bpm)}${asked}`;
}

/** Takes as lines of text, one a take, with a head. */
export function takeList(takes: readonly ListedTake[]): string[] {
  const tempos = takes.map(tempoText);
  const tempoWidth = Math.max(7, ...tempos.map(({ length }) => length));
  const head = `${'take'.padEnd(8)}  ${'played'.padEnd(16)}  ${'player'.padEnd(14)}  ${'BPM'.padEnd(tempoWidth)}  score`;
  return [
    `${head}            exercise`,
    ...takes.map((take, i) => {
      const word = take.scoreWord === null ? 'no score' : scoreWords[take.scoreWord];
      const score = take.score === null ? '  –' : String(shownScore(take.score)).padStart(3);
      return [
        shortId(take.id),
        localTime(take.recordedAt),
        padded(cut(printable(take.personName ?? '–'), 14), 14),
        padded(tempos[i]!, tempoWidth),
        `${score} ${padded(word, 12)}`,
        cut(takeTitle(take), 40),
      ].join('  ');
    }),
  ];
}
