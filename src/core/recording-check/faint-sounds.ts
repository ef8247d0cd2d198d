import type { Stroke } from '../onsets/stroke.ts';
import { median } from '../stats/median.ts';
import { quantile } from '../stats/quantile.ts';

/** How clearly the softer sounds of a take stand out, those that were left out of it among them. */
export interface FaintSounds {
  /** Evidence for an attack that a quarter of the softer sounds don't reach, nats. */
  readonly evidence: number;
  /** Their middle level, dBFS. */
  readonly levelDb: number;
  /** Share of all sounds that are faint and were taken for something else than strokes. */
  readonly leftOut: number;
}

/** Sounds with less evidence, nats, hardly stand out of what they sound in (`masked-strokes.ts`). */
export const faintEvidence = 60;
const softerQuarter = 0.25;
/** Softest and loudest strokes, but for a few; between them lies what parts soft from loud. */
const ends = { soft: 0.05, loud: 0.95 };
const fewest = 8;

/**
 * The softer sounds from the first stroke to the last, clicks left aside. A tap that noise has changed may be taken for
 * talk or a stick, so that only accents are left of a take: they all are looked at. Null with too few. Sounds in order
 * of time.
 *
 * @example faintSounds(hearing.sounds)?.evidence // 180
 */
export function faintSounds(
  sounds: readonly Pick<Stroke, 'time' | 'levelDb' | 'sound' | 'evidence'>[],
): FaintSounds | null {
  const isPad = ({ sound }: Pick<Stroke, 'sound'>) => sound === 'pad';
  const pads = sounds.filter(isPad);
  if (pads.length < fewest) return null;
  const [first, last] = [pads[0]!.time, pads.at(-1)!.time];
  const within = sounds.filter(({ sound, time }) => sound !== 'click' && time >= first && time <= last);
  const levels = pads.map(({ levelDb }) => levelDb);
  const middle = (quantile(levels, ends.soft) + quantile(levels, ends.loud)) / 2;
  const softer = within.filter(({ levelDb }) => levelDb < middle);
  if (softer.length < fewest) return null;
  const leftOut = within.filter((sound) => !isPad(sound) && sound.evidence < faintEvidence).length;
  return {
    evidence: quantile(
      softer.map(({ evidence }) => evidence),
      softerQuarter,
    ),
    levelDb: median(softer.map(({ levelDb }) => levelDb)),
    leftOut: leftOut / within.length,
  };
}
