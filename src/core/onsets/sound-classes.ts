import type { Source } from '../signal/source.ts';
import { anyBetween } from '../stats/any-between.ts';
import { extent } from '../stats/extent.ts';
import { evenRow } from './even-row.ts';
import { laidDown } from './laid-down.ts';
import { distanceFrom, findPadSound, type PadSound, type Sounding } from './pad-sound.ts';
import { rowEnds } from './row-end.ts';
import { soundCharacter } from './sound-character.ts';
import type { SoundClass, Stroke } from './stroke.ts';
import { timbreError } from './timbre.ts';

/** Distances from the pad's sound beyond which an attack is something else; 1 in 1000 strokes of a pad lies beyond. */
const farthest = 2.7;
/** What is poorly heard fits any sound: it counts as a stroke only in strokes' company and at strokes' level. */
const poor = { evidence: 60, errorDb: 6 };
/**
 * How near company is, s, and how far under the softest strokes (those of the softest share) it may lie, dB. Measured:
 * half to twice finds the same in 25 rendered takes, but twice `poorDb`, which takes one more sound for a stroke.
 */
const company = 0.8;
const underSoftest = { poorDb: 6, rowDb: 12, anyDb: 12 };
const softestShare = 0.08;
/** A sound where a row of strokes would have one may be further off; in usual intervals. */
const inRow = { farthest: 7, evidence: 15, nearest: 0.6, furthest: 1.6 };
/** Poor sounds much like the pad between sure strokes are taps when there are so many for each sure one; s. */
const crowd = { farthest: 2, reach: 1, share: 0.8 };
/** A second sound of the pad: its share of evident sounds, how many of it lie among the first's (within s), its level. */
const another = { share: 0.12, among: 0.8, reach: 1, belowDb: 12 };
/** A single sound this many usual intervals from any stroke must be much like the pad to be one. */
const lonely = { intervals: 3.5, farthest: 1.3 };
/** A voice is periodic and held; a stick on a stick is brighter than the pad (times its centroid) and isn't held. */
const voice = { voicing: 0.6, heldDb: -3 };
const stickBrighter = 1.3;
const hitDb = -2;
/** Measured: 8 to 30 tell the same. */
const padsCompared = 15;

/** A sound isn't its own company, s. */
const instant = 1e-6;

type Heard = Stroke & Sounding;

const isPoor = (sound: Heard) => sound.evidence < poor.evidence || timbreError(sound.timbre) > poor.errorDb;

/**
 * Gives every attack its class. The pad is the sound that most attacks share (`pad-sound.ts`); the same sounds in the
 * same order give the same classes. With too few attacks to know a pad all are taken for strokes.
 */
export function classifySounds(source: Source, sounds: readonly Stroke[]): Stroke[] {
  const heard = sounds.filter((sound): sound is Heard => sound.timbre !== null);
  const first = findPadSound(heard);
  if (first === null) return [...sounds];
  const bouncing = laidDown(heard);
  const bounced = new Set(heard.filter((_, i) => bouncing[i]));
  const clear = heard.filter((sound) => !isPoor(sound) && !bounced.has(sound));
  const second = secondSound(
    first,
    heard.filter((sound) => sound.evidence >= poor.evidence && !bounced.has(sound)),
  );
  const distanceOf = (sound: Heard) =>
    Math.min(
      distanceFrom(first, sound),
      second === null ? Number.POSITIVE_INFINITY : distanceFrom(second, sound),
    );
  const sure = clear.filter((sound) => distanceOf(sound) < farthest);
  const times = sure.map(({ time }) => time);
  // Taps in noise are poor every one of them; what tells them from a chance sound is that there are many.
  const likely = heard.filter(
    (sound) =>
      isPoor(sound) &&
      !bounced.has(sound) &&
      distanceOf(sound) < crowd.farthest &&
      anyBetween(times, sound.time - crowd.reach, sound.time) &&
      anyBetween(times, sound.time, sound.time + crowd.reach),
  );
  const strokes = likely.length >= crowd.share * sure.length ? [...sure, ...likely] : sure;
  const softest = strokes.map(({ levelDb }) => levelDb).sort((a, b) => a - b)[
    Math.floor(strokes.length * softestShare)
  ];
  const rowable = heard.filter(
    (sound) => !bounced.has(sound) && sound.evidence >= inRow.evidence && distanceOf(sound) < inRow.farthest,
  );
  const even = evenRow(rowable, times);
  const isSure = new Set<Heard>(sure);
  const atEnd = rowEnds(rowable, (i) => isSure.has(rowable[i]!));
  const inEvenRow = new Set(rowable.filter((_, i) => even[i] || atEnd[i]));
  const otherClass = otherClasses(source, sure);
  const spacing = medianInterval(sure);
  /** Strokes before and after it, about where a row of strokes would have them. */
  const fitsRow = ({ time, evidence }: Heard): boolean => {
    if (evidence < inRow.evidence) return false;
    const near = (from: number, to: number) => anyBetween(times, time + from, time + to);
    const { nearest, furthest } = inRow;
    return (
      near(-furthest * spacing, -nearest * spacing) &&
      near(nearest * spacing, furthest * spacing) &&
      !near(-nearest * spacing, -instant) &&
      !near(instant, nearest * spacing)
    );
  };
  const classOf = (sound: Heard): SoundClass => {
    if (bounced.has(sound)) return 'other';
    if (inEvenRow.has(sound)) return 'pad';
    const distance = distanceOf(sound);
    const { time } = sound;
    const reach = lonely.intervals * spacing;
    const apart =
      !anyBetween(times, time - reach, time - instant) && !anyBetween(times, time + instant, time + reach);
    const row = !apart && fitsRow(sound);
    const far = distance > (apart ? lonely.farthest : row ? inRow.farthest : farthest);
    const level = softest === undefined ? 0 : softest - sound.levelDb;
    const alone = !anyBetween(times, time - company, time + company);
    const weak = isPoor(sound) && (alone || level > (row ? underSoftest.rowDb : underSoftest.poorDb));
    return far || weak || level > underSoftest.anyDb ? otherClass(sound) : 'pad';
  };
  return sounds.map((sound) =>
    sound.timbre === null ? sound : { ...sound, sound: classOf(sound as Heard) },
  );
}

/**
 * Accents and taps may be two sounds: a drum speaks differently when struck softly. The second is taken in when it is
 * common, comes among strokes of the first, and isn't far below them.
 */
function secondSound(first: PadSound, evident: readonly Heard[]): PadSound | null {
  const near = evident.filter((sound) => distanceFrom(first, sound) < farthest);
  const rest = evident.filter((sound) => distanceFrom(first, sound) >= farthest);
  const found = findPadSound(rest);
  if (found === null || near.length === 0) return null;
  const members = rest.filter((sound) => distanceFrom(found, sound) < farthest);
  const times = near.map(({ time }) => time);
  const among = members.filter(
    ({ time }) =>
      anyBetween(times, time - another.reach, time) && anyBetween(times, time, time + another.reach),
  );
  const { least: lowest } = extent(near.map(({ levelDb }) => levelDb));
  const level = members.reduce((sum, { levelDb }) => sum + levelDb, 0) / members.length;
  const common =
    members.length >= another.share * evident.length && among.length >= another.among * members.length;
  return common && level > lowest - another.belowDb ? found : null;
}

/** Median interval between sounds, s. */
function medianInterval(sounds: readonly Heard[]): number {
  const intervals = sounds.slice(1).map(({ time }, i) => time - sounds[i]!.time);
  return intervals.sort((a, b) => a - b)[intervals.length >> 1] ?? Number.POSITIVE_INFINITY;
}

/** Names attacks that aren't the pad's, by comparison with some that are. */
function otherClasses(source: Source, pads: readonly Heard[]): (sound: Heard) => SoundClass {
  const step = Math.max(1, Math.floor(pads.length / padsCompared));
  const some = pads.filter((_, i) => i % step === 0).map(({ time }) => soundCharacter(source, time));
  const middle = (values: number[]) => values.sort((a, b) => a - b)[values.length >> 1] ?? 0;
  const padHz = middle(some.map(({ centroidHz }) => centroidHz));
  return ({ time }) => {
    const { centroidHz, voicing, heldDb } = soundCharacter(source, time);
    if (voicing > voice.voicing && heldDb > voice.heldDb) return 'voice';
    return centroidHz > stickBrighter * padHz && heldDb < hitDb ? 'stick-click' : 'other';
  };
}
