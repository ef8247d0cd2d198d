import { rounded } from '../../core/result/figures.ts';
import { dimensionName, scoreWords } from '../../core/result/names.ts';
import { shownScore } from '../../core/scoring/score-curve.ts';
import type { ListedTake } from '../../library/listed-takes.ts';
import { listedTempo } from '../../library/listed-tempo.ts';

const dayFormat = new Intl.DateTimeFormat('en-GB', {
  weekday: 'short',
  day: 'numeric',
  month: 'short',
  year: 'numeric',
  timeZone: 'UTC',
});

/** A calendar day in words: `Mon, 9 Mar 2026`. */
export const dayInWords = (day: string): string => dayFormat.format(new Date(`${day}T12:00:00Z`));

/** The time of day, where this device is: `17:30`. */
export const timeInWords = (moment: number): string =>
  new Date(moment).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });

/** What was played: the sheet's title, or its lines' names where it has none. */
export function playedInWords({ title, lines }: Pick<ListedTake, 'title' | 'lines'>): string {
  if (title !== '') return title;
  const names = lines.filter((name) => name !== '');
  if (names.length === 0) return 'Untitled exercise';
  return names.length > 2 ? `${names[0]} and ${names.length - 1} more lines` : names.join(', ');
}

/** The tempo of a take: `92 BPM`, or `92 BPM (asked: 80 BPM)` where another was played than asked for. */
export function tempoInWords(take: Parameters<typeof listedTempo>[0]): string {
  const tempo = listedTempo(take);
  if (tempo === null) return 'tempo not known';
  const words = ([low, high]: readonly [number, number]) =>
    low === high ? `${low} BPM` : `${low} to ${high} BPM`;
  const asked = tempo.asked === null ? '' : ` (asked: ${words(tempo.asked)})`;
  return `${tempo.isOpen ? 'about ' : ''}${words(tempo.bpm)}${asked}`;
}

/** A score and its word: `84, nearly there`. */
export function scoreInWords({ score, scoreWord, graded }: ListedTake): string {
  if (score === null || scoreWord === null)
    return graded ? 'no score: too few strokes' : 'could not be graded';
  return `${shownScore(score)}, ${scoreWords[scoreWord]}`;
}

/** The dimensions' scores in one line: `Evenness 94 (secure), Hands 71 (nearly there)`. */
export const dimensionsInWords = ({ dimensions }: ListedTake): string =>
  dimensions
    .map(({ id, score, word }) => `${dimensionName(id)} ${shownScore(score)} (${scoreWords[word]})`)
    .join(', ');

/** Bytes as people count them: `213 MB`. */
export function roomInWords(bytes: number): string {
  if (bytes < 1e6) return `${Math.ceil(bytes / 1e3)} kB`;
  if (bytes < 1e9) return `${rounded(bytes / 1e6, bytes < 1e7 ? 1 : 0)} MB`;
  return `${rounded(bytes / 1e9, 1)} GB`;
}

/** `1 take`, `3 takes`. */
export const counted = (count: number, one: string, more = `${one}s`): string =>
  `${count.toLocaleString('en-GB')} ${count === 1 ? one : more}`;
