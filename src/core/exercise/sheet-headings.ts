import type { TextFault } from './fault.ts';
import { limits } from './limits.ts';

/** For whom a sheet is and until when, as a teacher writes it at its top. All of it is untrusted text. */
export interface Assigned {
  /** Who is to play it; empty for anybody. */
  readonly player: string;
  /** The day until which, `2026-03-16`, or null. */
  readonly due: string | null;
  readonly note: string;
}

/** Words that speak of the whole sheet, each on a line of its own. */
export const headingWords = ['title', 'for', 'due', 'note'] as const;
export type HeadingWord = (typeof headingWords)[number];
export type Headings = Readonly<Partial<Record<HeadingWord, string>>>;

type HeadingFaultCode = 'setting-empty' | 'setting-unreadable' | 'name-too-long';

export const isHeading = (word: string): word is HeadingWord =>
  (headingWords as readonly string[]).includes(word);

/** Most characters of a note to the player: a few sentences. */
export const noteCharacters = 1000;

const isDay = (text: string) =>
  /^\d{4}-\d{2}-\d{2}$/.test(text) && new Date(`${text}T00:00:00Z`).toJSON()?.slice(0, 10) === text;

/**
 * What is wrong with the text of a heading; null where nothing is. A day is written as in ISO 8601, `2026-03-16`.
 *
 * @example headingFault('due', '16 March') // { code: 'setting-unreadable', facts: { setting: 'due', value: '16 March' } }
 */
export function headingFault(
  heading: HeadingWord,
  text: string,
): { readonly code: HeadingFaultCode; readonly facts: TextFault['facts'] } | null {
  const facts = { setting: heading, value: text.slice(0, 60) };
  if (text === '') return { code: 'setting-empty', facts };
  if (heading === 'due') return isDay(text) ? null : { code: 'setting-unreadable', facts };
  const most = heading === 'note' ? noteCharacters : limits.nameCharacters;
  const characters = [...text].length;
  return characters > most ? { code: 'name-too-long', facts: { ...facts, characters, most } } : null;
}

/** For whom and until when, of the headings read; null where they say nothing of it. */
export function assignedOf({ for: player, due, note }: Headings): Assigned | null {
  if (player === undefined && due === undefined && note === undefined) return null;
  return { player: player ?? '', due: due ?? null, note: note ?? '' };
}
