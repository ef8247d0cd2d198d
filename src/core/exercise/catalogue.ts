import { type AccentMask, everyMask, maskId, readMask, singleMasks } from './accent-masks.ts';
import { describeExercise, nameExercise } from './describe-exercise.ts';
import { type Division, divisions } from './divisions.ts';
import type { Beat, Hand } from './sheet.ts';
import { findSticking, type Sticking, stickingsFor } from './stickings.ts';
import { swapHands } from './swap-hands.ts';
import { writeNotation } from './write-notation.ts';

/** One exercise of the catalogue: a division of the beat, accents on the same partials of each beat, a sticking. */
export interface Exercise {
  /** `division-accents-sticking`, such as `triplet-1+2-doubles`; `-left` behind it when the left hand leads. */
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly division: Division;
  readonly accents: AccentMask;
  readonly sticking: Sticking;
  readonly lead: Hand;
  /** Whole bars of four beats, as many as it takes for hands and beat to come together again. */
  readonly beats: readonly Beat[];
  readonly notation: string;
}

export interface ExerciseFilter {
  /** Equal parts of the beat. */
  readonly division?: number;
  /** As `readMask` reads it. */
  readonly accents?: string;
  /** As `findSticking` reads it. */
  readonly sticking?: string;
  /** Words that must all occur in id, name, description or notation. */
  readonly text?: string;
}

const beatsInBar = 4;

const greatestCommonDivisor = (a: number, b: number): number =>
  b === 0 ? a : greatestCommonDivisor(b, a % b);

/** Beats after which a cycle of hands begins on a bar's first note again. */
function beatsToClose(cycleLength: number, parts: number): number {
  const inBar = parts * beatsInBar;
  return (cycleLength / greatestCommonDivisor(cycleLength, inBar)) * beatsInBar;
}

function makeExercise(division: Division, mask: AccentMask, sticking: Sticking, lead: Hand): Exercise {
  const { parts } = division;
  const { cycle } = sticking;
  const rightLed = Array.from({ length: beatsToClose(cycle.length, parts) }, (_, beat) => ({
    barBefore: beat > 0 && beat % beatsInBar === 0,
    partials: Array.from({ length: parts }, (_, index) => ({
      hand: cycle[(beat * parts + index) % cycle.length] as Hand,
      accent: mask.includes(index + 1),
      buzz: false,
      grace: [],
    })),
  }));
  const beats = lead === 'L' ? swapHands(rightLed) : rightLed;
  const described = { division, mask, sticking, lead, beats };
  return {
    id: `${division.id}-${maskId(mask, parts)}-${sticking.id}${lead === 'L' ? '-left' : ''}`,
    name: nameExercise(described),
    description: describeExercise(described),
    division,
    accents: mask,
    sticking,
    lead,
    beats,
    notation: writeNotation(beats),
  };
}

let made: readonly Exercise[] | undefined;

/**
 * Triplets with every set of accents; other divisions with one accent a beat, all and none. Led by the right. Made when
 * it is first asked for: most takes are of a written sheet.
 */
function catalogue(): readonly Exercise[] {
  made ??= divisions.flatMap((division) => {
    const masks = (division.parts === 3 ? everyMask : singleMasks)(division.parts);
    return stickingsFor(division.parts).flatMap((sticking) =>
      masks.map((mask) => makeExercise(division, mask, sticking, 'R')),
    );
  });
  return made;
}

/**
 * The catalogue's exercises that pass a filter, in its order; all of them without one.
 *
 * @example listExercises({ division: 3, accents: '1+2', sticking: 'doubles' }) // triplet-1+2-doubles alone
 */
export function listExercises(filter: ExerciseFilter = {}): readonly Exercise[] {
  const words = (filter.text ?? '').toLowerCase().split(/\s+/);
  return catalogue().filter(({ id, name, description, notation, division, accents, sticking }) => {
    const { parts } = division;
    if (filter.division !== undefined && parts !== filter.division) return false;
    if (filter.accents !== undefined && readMask(filter.accents, parts)?.join() !== accents.join())
      return false;
    if (filter.sticking !== undefined && findSticking(filter.sticking, parts)?.id !== sticking.id)
      return false;
    const text = `${id} ${name} ${description} ${notation}`.toLowerCase();
    return words.every((word) => text.includes(word));
  });
}

/**
 * The exercise with an id, or null. Capitals don't matter, accents may stand in any order, a sticking may be
 * written out in hands, and `-left` behind the id gives the same led by the left hand.
 *
 * @example findExercise('triplet-1-hand-to-hand')?.notation // '>RLR >LRL >RLR >LRL'
 */
export function findExercise(id: string): Exercise | null {
  const found = /^([a-z]{1,20})-([a-z0-9+]{1,40})-([a-z-]{1,40}?)(-left)?$/.exec(id.trim().toLowerCase());
  const division = divisions.find((one) => one.id === found?.[1]);
  if (!found || !division) return null;
  const mask = readMask(found[2]!, division.parts);
  const sticking = findSticking(found[3]!, division.parts);
  if (mask === null || sticking === null) return null;
  const listed = catalogue().find(
    (one) => one.id === `${division.id}-${maskId(mask, division.parts)}-${sticking.id}`,
  );
  if (listed === undefined) return null;
  return found[4] === undefined ? listed : makeExercise(division, mask, sticking, 'L');
}
