import type { Alignment } from '../alignment/alignment.ts';
import { findLevels, type LevelModel, levelEvidence } from '../alignment/level-evidence.ts';
import type { Slot } from '../exercise/slot.ts';
import type { Outcome } from '../result/take-result.ts';
import { type AccentTurn, accentTurns } from './accent-turns.ts';
import { notApplicable, notMeasurable } from './outcomes.ts';
import type { PlayedStroke } from './played-stroke.ts';
import { slippedTurns } from './slipped-turns.ts';

/** What a single stroke's level says against what is written. */
export type HeardAs = 'lost' | 'added' | 'moved-away' | 'moved-here';

/** What the levels of a take say of its accents. Strokes go by their number among those aligned. */
interface HeardAccents {
  readonly turns: readonly AccentTurn[];
  /** Strokes of turned runs, and those of them that still lie on the slots as written, accents beside them. */
  readonly turned: ReadonlySet<number>;
  readonly offSlots: ReadonlySet<number>;
  /** Strokes that sounded otherwise than written, outside turned runs; or why single strokes can't be judged. */
  readonly single: { readonly heardAs: ReadonlyMap<number, HeardAs> } | { readonly refusal: Outcome };
}

/** What a take's accents are, or why nothing can be said of them. */
export type AccentsOrReason = { readonly accents: HeardAccents } | { readonly refusal: Outcome };

/** Strokes below which accents aren't judged (our judgement: eight triplets). */
const fewestStrokes = 24;
/** Spreads between accents and taps from which whole runs are judged, and from which single strokes are. */
const leastDistance = { run: 2, single: 3 } as const;
/** A level must speak this clearly for the other kind, nats (our judgement: odds of about 3 to 1). */
const clear = 1;
/** And lie where no more than one in a hundred of its own kind does: standard deviations from their mean. */
const outlying = 2.326;

interface Take {
  readonly alignment: Alignment;
  readonly slots: readonly Slot[];
  readonly strokes: readonly PlayedStroke[];
  /** For each segment by how many partials its beats lie off the clicks; null where no click tells. */
  readonly offClick?: readonly (number | null)[];
}

/** Distance of accents from taps in spreads of the wider of the two. */
const distanceOf = ({ accentDb, tapDb, accentSpreadDb, tapSpreadDb }: LevelModel) =>
  (accentDb - tapDb) / Math.max(accentSpreadDb, tapSpreadDb);

/**
 * Which written accents sounded like taps, which taps like accents, and where the accents as a whole lie on other
 * partials. The two levels come from the take itself, whatever is written (expectation–maximisation). An accent lost
 * right beside a tap that sounded like one counts as moved. A run is judged by many strokes together, so that it needs
 * less between accents and taps than a single stroke does.
 */
export function heardAccents({ alignment, slots, strokes, offClick = [] }: Take): AccentsOrReason {
  const main = slots.filter((slot) => !slot.grace);
  const written = main.filter((slot) => slot.accent).length;
  if (written === 0) return { refusal: notApplicable('no-accents') };
  if (written === main.length) return { refusal: notApplicable('no-taps') };
  if (strokes.length < fewestStrokes) {
    return { refusal: notMeasurable('too-few-strokes', { strokes: strokes.length, needed: fewestStrokes }) };
  }
  const levels = strokes.map((s) => s.levelDb);
  const model = findLevels(levels, written / main.length);
  const tooNear = notMeasurable('accents-not-told-from-taps');
  if (model === null || distanceOf(model) < leastDistance.run) return { refusal: tooNear };
  const evidence = levelEvidence(levels, model);
  const unfollowed = accentTurns({ slots, strokes, evidence });
  const followed = slippedTurns({ alignment, slots, strokes, evidence, offClick });
  const strokesOf = (turns: readonly AccentTurn[]) =>
    turns.flatMap(({ from, to }) => strokes.slice(from, to + 1).map((s) => s.stroke));
  const turns = [...unfollowed, ...followed].sort((a, b) => a.from - b.from);
  const offSlots = new Set(strokesOf(unfollowed));
  const found = { turns, offSlots, turned: new Set(strokesOf(turns)) };
  if (distanceOf(model) < leastDistance.single) {
    return { accents: { ...found, single: { refusal: tooNear } } };
  }
  const sounds = strokes.map(({ slot, stroke, levelDb }, i): HeardAs | null => {
    if (offSlots.has(stroke)) return null;
    const odds = evidence.asAccent[i]! - evidence.asTap[i]!;
    if (slot.accent) {
      return odds < -clear && levelDb < model.accentDb - outlying * model.accentSpreadDb ? 'lost' : null;
    }
    return odds > clear && levelDb > model.tapDb + outlying * model.tapSpreadDb ? 'added' : null;
  });
  strokes.forEach(({ stretch }, i) => {
    if (sounds[i] !== 'lost') return;
    const beside = [i + 1, i - 1].find((k) => sounds[k] === 'added' && strokes[k]!.stretch === stretch);
    if (beside === undefined) return;
    sounds[i] = 'moved-away';
    sounds[beside] = 'moved-here';
  });
  const heardAs = new Map<number, HeardAs>();
  sounds.forEach((sound, i) => {
    if (sound !== null) heardAs.set(strokes[i]!.stroke, sound);
  });
  return { accents: { ...found, single: { heardAs } } };
}
