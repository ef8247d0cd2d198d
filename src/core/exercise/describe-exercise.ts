import type { AccentMask } from './accent-masks.ts';
import type { Division } from './divisions.ts';
import type { Beat, Hand } from './sheet.ts';
import type { Sticking } from './stickings.ts';

const ordinals = ['', 'first', 'second', 'third', 'fourth', 'fifth', 'sixth'];

function accentPhrase(mask: AccentMask, parts: number): string {
  if (mask.length === 0) return 'all taps, no accents';
  if (mask.length === parts) return 'every note accented';
  const places = mask.map((partial) => ordinals[partial]).join(' and ');
  return mask.length === 1
    ? `accent on the ${places} note of each beat`
    : `accents on the ${places} notes of each beat`;
}

function handsPhrase(beats: readonly Beat[]): string {
  const hands = beats.flatMap((beat) => beat.partials).flatMap((note) => (note?.accent ? [note.hand] : []));
  const right = hands.filter((hand) => hand === 'R').length;
  const left = hands.length - right;
  if (right === left) return 'as many for the right hand as for the left';
  if (left === 0) return 'always in the right hand';
  if (right === 0) return 'always in the left hand';
  return `${right} in the right hand for ${left} in the left`;
}

interface Described {
  readonly division: Division;
  readonly mask: AccentMask;
  readonly sticking: Sticking;
  readonly lead: Hand;
  readonly beats: readonly Beat[];
}

/** A short name: `Triplets, accent 1+2, doubles`. */
export function nameExercise({ division, mask, sticking, lead }: Described): string {
  const { length } = mask;
  const accents =
    length === 0 ? 'no accents' : length === division.parts ? 'all accents' : `accent ${mask.join('+')}`;
  return `${division.name}, ${accents}, ${sticking.name}${lead === 'L' ? ', left hand first' : ''}`;
}

/** One sentence in trade words: division, sticking, where the accents are and which hands have them. */
export function describeExercise({ division, mask, sticking, lead, beats }: Described): string {
  const { name, cycle } = sticking;
  const named = name === cycle ? `sticking ${name}` : name;
  const first = lead === 'L' ? ', left hand first' : '';
  const accented = mask.length > 0 && mask.length < division.parts;
  const hands = accented ? `, ${handsPhrase(beats)}` : '';
  return `${division.name}, ${named}${first}; ${accentPhrase(mask, division.parts)}${hands}.`;
}
