import type { LevelEvidence } from '../alignment/level-evidence.ts';
import type { Slot } from '../exercise/slot.ts';
import type { PlayedStroke } from './played-stroke.ts';

/** A run of strokes whose accents lie on other partials than written: the beat has turned round. */
export interface AccentTurn {
  /** First and last stroke of the run, by place in the list of played strokes. */
  readonly from: number;
  readonly to: number;
  /** The first one's number among the strokes aligned. */
  readonly opensAt: number;
  /** Strokes by which the accents come late; negative = early. */
  readonly by: number;
  /** How much better the accents fit there than as written, nats. */
  readonly logLikelihood: number;
}

/** What a change of the accents' place must bring to be believed, nats (our judgement: three beats of clear levels). */
export const leastGain = 10;

/** Accents of a line's main slots in playing order, and the place of each slot among them. */
export function linePatterns(slots: readonly Slot[]) {
  const accents = new Map<number, boolean[]>();
  const placeOf = new Map<number, number>();
  const divisions = new Map<number, number>();
  for (const slot of slots) {
    if (slot.grace) continue;
    const own = accents.get(slot.line) ?? [];
    placeOf.set(slot.index, own.length);
    own.push(slot.accent);
    accents.set(slot.line, own);
    divisions.set(slot.line, Math.max(divisions.get(slot.line) ?? 1, slot.divisions));
  }
  return { accents, placeOf, divisions };
}

/** The accent at a place of a pattern that goes round. */
export function patternAt(pattern: readonly boolean[], place: number): boolean {
  const n = pattern.length;
  return pattern[((place % n) + n) % n]!;
}

/** Shifts of a pattern up to half a beat that differ from it and from each other; nought first, then the nearest. */
export function tellingShifts(accents: readonly boolean[], divisions: number): number[] {
  const turned = (by: number) => accents.map((_, i) => (patternAt(accents, i - by) ? '>' : '.')).join('');
  const seen = new Map<string, number>([[turned(0), 0]]);
  for (let by = 1; by <= Math.floor(divisions / 2); by++) {
    for (const signed of [by, -by]) if (!seen.has(turned(signed))) seen.set(turned(signed), signed);
  }
  return [...seen.values()];
}

/** The most likely course of shifts through evidence[shift][stroke], each change at its price (Viterbi 1967). */
function bestCourse(evidence: readonly Float64Array[]): Int32Array {
  const count = evidence[0]!.length;
  let score = evidence.map((own, s) => own[0]! - (s === 0 ? 0 : leastGain));
  const cameFrom: Int32Array[] = [];
  for (let i = 1; i < count; i++) {
    const best = score.reduce((b, value, s) => (value > score[b]! ? s : b), 0);
    const stays = score.map((value) => value >= score[best]! - leastGain);
    cameFrom.push(Int32Array.from(stays, (stay, s) => (stay ? s : best)));
    score = score.map((value, s) => (stays[s] ? value : score[best]! - leastGain) + evidence[s]![i]!);
  }
  const course = new Int32Array(count);
  course[count - 1] = score.reduce((b, value, s) => (value > score[b]! ? s : b), 0);
  for (let i = count - 1; i > 0; i--) course[i - 1] = cameFrom[i - 1]![course[i]!]!;
  return course;
}

/**
 * Where the accents turn round: for each line and stretch the most likely course of shifts of the whole pattern, given
 * what each stroke's level says. A shift that leaves the pattern as it is can't be told and isn't tried.
 *
 * @example accentTurns({ slots, strokes, evidence })[0] // { from: 36, to: 71, by: 1, logLikelihood: 60 }
 */
export function accentTurns({
  slots,
  strokes,
  evidence,
}: {
  readonly slots: readonly Slot[];
  readonly strokes: readonly PlayedStroke[];
  readonly evidence: LevelEvidence;
}): AccentTurn[] {
  const { accents, placeOf, divisions } = linePatterns(slots);
  const turns: AccentTurn[] = [];
  for (let from = 0; from < strokes.length; ) {
    const { slot, stretch } = strokes[from]!;
    let end = from + 1;
    while (end < strokes.length && strokes[end]!.slot.line === slot.line && strokes[end]!.stretch === stretch)
      end++;
    const pattern = accents.get(slot.line)!;
    const shifts = tellingShifts(pattern, divisions.get(slot.line)!);
    const says = shifts.map((by) =>
      Float64Array.from({ length: end - from }, (_, k) => {
        const place = placeOf.get(strokes[from + k]!.slot.index)!;
        const accent = patternAt(pattern, place - by);
        return (accent ? evidence.asAccent : evidence.asTap)[from + k]!;
      }),
    );
    const course = bestCourse(says);
    for (let k = 0; k < course.length; ) {
      let last = k;
      while (last + 1 < course.length && course[last + 1] === course[k]) last++;
      const state = course[k]!;
      if (state !== 0) {
        // Strokes that are alike either way belong to what was before, where there is something before.
        let first = k;
        while (k > 0 && first < last && says[state]![first] === says[0]![first]) first++;
        let gain = 0;
        for (let i = first; i <= last; i++) gain += says[state]![i]! - says[0]![i]!;
        turns.push({
          from: from + first,
          to: from + last,
          opensAt: strokes[from + first]!.stroke,
          by: shifts[state]!,
          logLikelihood: gain,
        });
      }
      k = last + 1;
    }
    from = end;
  }
  return turns;
}
