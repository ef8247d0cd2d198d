import type { ListeningTake } from './listening-take.ts';

/** What is heard over and over: nothing, a beat, or one time through a line. */
export type Round = 'on' | 'beat' | 'line';

/** Share of a beat by which its first stroke may come early. */
const early = 0.06;

/**
 * The beat in which a moment lies, by index; the next one for a moment before the first or in a pause, the last one
 * behind all. Null for a take without beats.
 */
export function beatAt({ beats }: ListeningTake, time: number): number | null {
  if (beats.from.length === 0) return null;
  const beat = beats.to.findIndex((to, i) => time < to - early * (to - beats.from[i]!));
  return beat === -1 ? beats.from.length - 1 : beat;
}

/** From where to where a beat, or the time through a line that it belongs to, goes round, s. */
export function roundSpan(
  { beats }: ListeningTake,
  beat: number,
  round: Exclude<Round, 'on'>,
): { readonly from: number; readonly to: number } {
  const go = beats.go[beat]!;
  const first = round === 'beat' ? beat : beats.go.indexOf(go);
  const last = round === 'beat' ? beat : beats.go.lastIndexOf(go);
  return { from: beats.from[first]!, to: beats.to[last]! };
}

/** Where a beat stands, in words: 'line 1, time 2, beat 3'. */
export function beatWords({ beats, goes }: ListeningTake, beat: number): string {
  const go = beats.go[beat]!;
  return `${goes[go]!}, beat ${beat - beats.go.indexOf(go) + 1}`;
}
