/** A pattern of hands, played round and round. */
export interface Sticking {
  /** Word in an exercise's id. */
  readonly id: string;
  /** Hands from one start of the pattern to the next, led by the right. */
  readonly cycle: string;
  /** Name shown to people. */
  readonly name: string;
}

/**
 * Stickings with a name of their own; the paradiddles are standard rudiments (names and hands as in the list of
 * forty of the Percussive Arts Society, quoted from memory).
 */
export const namedStickings = {
  handToHand: { id: 'hand-to-hand', cycle: 'RL', name: 'hand to hand' },
  doubles: { id: 'doubles', cycle: 'RRLL', name: 'doubles' },
  triples: { id: 'triples', cycle: 'RRRLLL', name: 'three in a row' },
  paradiddle: { id: 'paradiddle', cycle: 'RLRRLRLL', name: 'paradiddle' },
  doubleParadiddle: { id: 'double-paradiddle', cycle: 'RLRLRRLRLRLL', name: 'double paradiddle' },
} as const satisfies Record<string, Sticking>;

/** The most strokes in a row on one hand when the hands are played round and round. */
export function longestRun(cycle: string): number {
  if (new Set(cycle).size < 2) return Number.POSITIVE_INFINITY;
  return Math.max(...(cycle + cycle).match(/R+|L+/g)!.map((run) => run.length));
}

/** Whether two cycles, each played round and round from its start, give the same hands. */
function sameHands(a: string, b: string): boolean {
  return a.repeat(b.length) === b.repeat(a.length);
}

/**
 * Every six-note pattern of hands, two beats of triplets, with at most three in a row on one hand when repeated.
 * Led by the right: the same with the hands swapped is not listed again. A pattern turned round by a note or
 * more is another exercise, for the accents fall on other hands or the bar begins elsewhere. There are 19, of
 * which two go by their names: RLRLRL hand to hand and RRRLLL three in a row.
 */
export function sixNoteStickings(): readonly Sticking[] {
  const named = Object.values(namedStickings);
  return Array.from(
    { length: 32 },
    (_, bits) => `R${bits.toString(2).padStart(5, '0').replaceAll('0', 'R').replaceAll('1', 'L')}`,
  )
    .filter((cycle) => longestRun(cycle) <= 3)
    .map(
      (cycle) =>
        named.find((sticking) => sameHands(sticking.cycle, cycle)) ?? {
          id: cycle.toLowerCase(),
          cycle,
          name: cycle,
        },
    );
}

/** The stickings that the catalogue combines with a division of the beat, the named ones first. */
export function stickingsFor(parts: number): readonly Sticking[] {
  const { handToHand, doubles, triples, paradiddle, doubleParadiddle } = namedStickings;
  if (parts === 3)
    return [...new Set([handToHand, doubles, triples, doubleParadiddle, ...sixNoteStickings()])];
  if (parts === 6) return [handToHand, doubles, triples, doubleParadiddle];
  return parts === 5 ? [handToHand, doubles] : [handToHand, doubles, paradiddle];
}

/**
 * Finds a sticking by its id, or by its hands in full; null when there is none.
 *
 * @example findSticking('RRLL', 3)?.id // 'doubles'
 */
export function findSticking(text: string, parts: number): Sticking | null {
  const word = text.trim().toLowerCase();
  const hands = /^[rl]{2,24}$/.test(word) ? word.toUpperCase() : null;
  return (
    stickingsFor(parts).find(({ id, cycle }) => id === word || (hands !== null && sameHands(hands, cycle))) ??
    null
  );
}
