import type { PlayedClick } from '../../../core/grading/click-to-hold-against.ts';
import type { Reason } from '../../../core/result/take-result.ts';
import type { RecordedTake } from '../recorded-take.ts';
import type { RecoveredSound, UnfinishedTake } from './recover-takes.ts';

const areTimes = (times: unknown): times is readonly number[] =>
  Array.isArray(times) && times.every((time) => typeof time === 'number');

/** The click that was noted with a recovered recording, or null: it is noted when a take ends, not before. */
export function recoveredClick({ notes }: RecoveredSound): PlayedClick | null {
  const noted = notes.findLast(({ what }) => what === 'click')?.facts.playedClick as
    | Partial<PlayedClick>
    | null
    | undefined;
  if (noted === null || noted === undefined) return null;
  const { times, audible, sounds, delay, calibrated, uncertaintyMs } = noted;
  const isClick =
    areTimes(times) &&
    (audible === undefined || (Array.isArray(audible) && audible.length === times.length)) &&
    (sounds === undefined || (Array.isArray(sounds) && sounds.every((one) => areTimes(one?.times)))) &&
    (delay === undefined || typeof delay === 'number') &&
    typeof calibrated === 'boolean' &&
    typeof uncertaintyMs === 'number';
  return isClick ? (noted as PlayedClick) : null;
}

/** What the reader of a recovered take's result must know. */
export const recoveredWarnings = ({ samples, sampleRate, notes }: RecoveredSound): Reason[] =>
  notes.some(({ what }) => what === 'click')
    ? []
    : [{ code: 'recording-cut-short', facts: { at: samples.length / sampleRate } }];

/** A recovered recording as one that was just made. */
export function recoveredAsRecorded(take: UnfinishedTake, sound: RecoveredSound): RecordedTake {
  const playedClick = recoveredClick(sound);
  const { samples, sampleRate, gaps } = sound;
  const unknown = { echoCancellation: null, noiseSuppression: null, autoGainControl: null };
  return {
    samples,
    sampleRate,
    heard: null,
    gaps,
    playedClick,
    clickTimes: playedClick?.calibrated ? playedClick.times : null,
    warnings: recoveredWarnings(sound),
    troubles: [],
    device: { input: '', output: '', settings: { ...unknown, sampleRate, channels: 1 }, proof: null },
    setUpId: null,
    safe: true,
    release: () => take.remove(),
  };
}
