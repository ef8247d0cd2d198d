import { findLevels, levelEvidence } from '../alignment/level-evidence.ts';
import type { Outcome } from '../result/take-result.ts';
import { type AccentTurn, accentTurns } from './accent-turns.ts';
import { notApplicable, notMeasurable } from './outcomes.ts';
import type { Performance } from './performance.ts';
import { slippedTurns } from './slipped-turns.ts';

/** What the levels of a take say of its accents, stroke by stroke. */
export interface HeardAccents {
  readonly turns: readonly AccentTurn[];
  /** By place in the list of strokes; strokes off their slots in a turned run are `as-written`: the turn says it all. */
  readonly heard: readonly ('as-written' | 'lost' | 'added' | 'moved-away' | 'moved-here')[];
  /** 1 for strokes of a turned run. */
  readonly turned: Uint8Array;
  /** 1 for those of them that still lie on the slots as written, accents beside them. */
  readonly offSlots: Uint8Array;
}

/** Strokes below which accents aren't judged one by one (our judgement: eight triplets). */
const fewestStrokes = 24;
/** Accents and taps nearer than so many spreads are too often taken for each other (our judgement). */
const leastDistance = 4;
/** A level must speak this clearly for the other kind, nats (our judgement: odds of about 3 to 1). */
const clear = 1;

type Found = { readonly accents: HeardAccents } | { readonly refusal: Outcome };

/** Several figures ask the same of a take: the answer is worked out once. */
const answers = new WeakMap<object, Found>();

/**
 * Which written accents sounded like taps, which taps like accents, and where the accents as a whole lie on other
 * partials. The two levels come from the take itself, whatever is written (expectation–maximisation). An accent lost
 * right beside a tap that sounded like one counts as moved.
 */
export function heardAccents(take: Pick<Performance, 'alignment' | 'slots' | 'strokes'>): Found {
  const known = answers.get(take);
  if (known) return known;
  const found = listenForAccents(take);
  answers.set(take, found);
  return found;
}

function listenForAccents({
  alignment,
  slots,
  strokes,
}: Pick<Performance, 'alignment' | 'slots' | 'strokes'>): Found {
  const main = slots.filter((slot) => !slot.grace);
  const written = main.filter((slot) => slot.accent).length;
  if (written === 0) return { refusal: notApplicable('no-accents') };
  if (written === main.length) return { refusal: notApplicable('no-taps') };
  if (strokes.length < fewestStrokes) {
    return { refusal: notMeasurable('too-few-strokes', { strokes: strokes.length, needed: fewestStrokes }) };
  }
  const levels = strokes.map((s) => s.levelDb);
  const model = findLevels(levels, written / main.length);
  const apart = model === null ? 0 : model.accentDb - model.tapDb;
  if (model === null || apart < leastDistance * Math.max(model.accentSpreadDb, model.tapSpreadDb)) {
    return { refusal: notMeasurable('accents-not-told-from-taps') };
  }
  const evidence = levelEvidence(levels, model);
  const unfollowed = accentTurns({ slots, strokes, evidence });
  const followed = slippedTurns({ alignment, slots, strokes, evidence });
  const offSlots = new Uint8Array(strokes.length);
  for (const { from, to } of unfollowed) offSlots.fill(1, from, to + 1);
  const turned = Uint8Array.from(offSlots);
  for (const { from, to } of followed) turned.fill(1, from, to + 1);
  const turns = [...unfollowed, ...followed].sort((a, b) => a.from - b.from);
  const other = strokes.map(({ slot }, i) => {
    const odds = evidence.asAccent[i]! - evidence.asTap[i]!;
    return offSlots[i] === 0 && (slot.accent ? odds < -clear : odds > clear);
  });
  const heard: HeardAccents['heard'][number][] = strokes.map(({ slot }, i) =>
    other[i] ? (slot.accent ? 'lost' : 'added') : 'as-written',
  );
  strokes.forEach(({ stretch }, i) => {
    if (heard[i] !== 'lost') return;
    const beside = [i + 1, i - 1].find((k) => heard[k] === 'added' && strokes[k]!.stretch === stretch);
    if (beside === undefined) return;
    heard[i] = 'moved-away';
    heard[beside] = 'moved-here';
  });
  return { accents: { turns, heard, turned, offSlots } };
}
