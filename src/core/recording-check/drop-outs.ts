import { anyBetween } from '../stats/any-between.ts';
import type { Finding, HeardRecording } from './heard-recording.ts';
import { lostStretches } from './lost-stretches.ts';
import { silenceBetween } from './silence-between.ts';
import { strokeCounts, strokeTimes } from './spoiled-measures.ts';

/** What lies so near a gap that the recorder reported belongs to it, samples. */
const nearGap = 480;
/** Places that a second is divided into: losses nearer to each other count as one. */
const placesASecond = 20;
/** Longer stillness is a pause of the recorder or a gate's, s. */
const longest = 0.5;
/** A machine's click may repeat itself to the last bit, s. */
const nearClick = { before: 0.01, after: 0.25 };
/** Jumps right at a sound may be the sound's own, s. */
const nearSound = { before: 0.002, after: 0.004 };
/** A single jump may be a crackle of the microphone; so many tell of lost sound. */
const fewestJumps = 2;
/** More a second come from a buzz in the line, whose edges jump too, not from lost sound. Our judgement. */
const mostJumps = 2;
/**
 * From here on figures of rendered takes are wrong (`reports/recording-check.md`): where the wave jumps, what follows
 * comes early; where it stands still or comes twice, time goes on, and only strokes inside are lost.
 */
const spoiling = { jumpsAMinute: 4, lostShare: 0.015 };

/**
 * Lost sound: the signal stands still amid sound that should go on, a block comes twice to the last bit, the wave jumps
 * where no stroke begins, or strokes come early from a place on, by the same each time. Gaps that the recorder reported
 * aren't counted again.
 */
export function dropOuts({ channels, sound, hearing, gaps, performance }: HeardRecording): Finding | null {
  const { sampleRate } = sound;
  const clicks = hearing.click?.times ?? [];
  const all = hearing.sounds.map(({ time }) => time);
  const pads = hearing.sounds.filter(({ sound }) => sound === 'pad').map(({ time }) => time);
  const known = (at: number) =>
    gaps.some((gap) => at > gap.at - nearGap && at < gap.at + gap.frames + nearGap);
  const atClick = (time: number) => anyBetween(clicks, time - nearClick.after, time + nearClick.before);
  const places = new Map<number, number>();
  let first = Number.POSITIVE_INFINITY;
  const place = (at: number, samples: number) => {
    const near = Math.round((placesASecond * at) / sampleRate);
    first = Math.min(first, near);
    places.set(near, Math.max(places.get(near) ?? 0, samples / sampleRate));
  };
  for (const { standStills, repeats } of channels) {
    const between = silenceBetween(standStills, { hearing, performance, sound });
    for (const one of standStills)
      if (one.broken && !known(one.at) && one.samples < longest * sampleRate && !between.has(one))
        place(one.at, one.samples);
    // The same recorded stroke laid on silence again and again isn't sound that comes twice.
    const begins = [...between].map(({ at, samples }) => at + samples);
    for (const { at, samples } of repeats)
      if (!known(at) && !atClick(at / sampleRate) && !anyBetween(begins, at, at + samples))
        place(at, samples);
  }
  const still = places.size;
  const apart = sound.jumps.filter(({ at }) => {
    const time = at / sampleRate;
    return !known(at) && !anyBetween(all, time - nearSound.after, time + nearSound.before);
  });
  const length = sound.mean.length / sound.frameRate;
  const jumps = apart.length > mostJumps * length ? [] : apart;
  const { strokes } = performance;
  const lost = lostStretches(performance, pads).filter(({ time }) => !known(time * sampleRate));
  if (lost.length === 0 && still + jumps.length < (still > 0 ? 1 : fewestJumps)) return null;
  for (const { at } of jumps) place(at, 0);
  for (const { time, seconds } of lost) place(time * sampleRate, seconds * sampleRate);
  const seconds = [...places.values()].reduce((sum, one) => sum + one, 0);
  const from = (strokes[0]?.time ?? 0) - 0.1;
  const to = (strokes.at(-1)?.time ?? 0) + 0.1;
  const within = jumps.filter(({ at }) => at / sampleRate > from && at / sampleRate < to).length;
  const comesEarly = lost.length > 0 || within >= Math.max(2, (spoiling.jumpsAMinute * (to - from)) / 60);
  const muchLost = seconds > spoiling.lostShare * length;
  const facts = { places: places.size, at: first / placesASecond, seconds };
  return {
    code: 'drop-outs',
    facts,
    // What comes early by a partial or more stands on another's slot, and accents beside their own.
    spoils: [
      ...(comesEarly ? [...strokeTimes, 'turned-accents'] : []),
      ...(comesEarly || muchLost ? strokeCounts : []),
    ],
  };
}
