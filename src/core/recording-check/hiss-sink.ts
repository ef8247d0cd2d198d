import { pickup } from '../signal/pickup.ts';
import { quantile } from '../stats/quantile.ts';
import type { HeardRecording } from './heard-recording.ts';
import { windowSpectrum } from './window-spectrum.ts';

/** Hiss is heard up here, where drums and rooms ring least, Hz. Each band by itself: one may be free of them. */
const bands = [
  { fromHz: 7000, toHz: 11_000 },
  { fromHz: 11_000, toHz: 16_000 },
  { fromHz: 16_000, toHz: 21_000 },
] as const;
const windowSeconds = 0.0107;
/** While it is played: the last windows before a stroke, this long after the one before, s. */
const play = { windows: 3, before: 0.012, after: 0.05, latest: 0.4 };
const fewest = { pauses: 8, play: 20 };
/** So many windows of each are looked at, spread over the recording. */
const most = 120;
/** The quieter part of either: what rustles or rings only adds. */
const share = 0.25;
const leastPower = 1e-15;
/** A band below this while it is played holds no hiss but a decoder's rounding, dB. */
const nothingDb = -85;

/**
 * How far the highest hiss sinks between strokes under what it is in pauses, dB: the most of any band. A plain
 * recording comes to nothing or less, since strokes only add. NaN where there is too little to tell.
 */
export function hissSinksDb({
  source,
  quiet,
  hearing,
}: Pick<HeardRecording, 'source' | 'quiet' | 'hearing'>): number {
  const times: number[] = [];
  const { sounds } = hearing;
  for (let i = 1; i < sounds.length; i++) {
    const [from, to] = [sounds[i - 1]!.time, sounds[i]!.time - play.before];
    for (let k = 1; k <= play.windows; k++) {
      const time = to - k * windowSeconds;
      if (time > from + play.after && time < from + play.latest) times.push(time);
    }
  }
  if (quiet.pauses.length < fewest.pauses || times.length < fewest.play) return Number.NaN;
  const heard = pickup(source);
  const { sampleRate } = heard;
  const { size, powerAt } = windowSpectrum(heard, windowSeconds);
  const used = bands.filter(({ toHz }) => toHz < 0.48 * sampleRate);
  const levels = (places: readonly number[]) => {
    const all = used.map((): number[] => []);
    const step = Math.max(1, places.length / most);
    for (let at = 0; at < places.length; at += step) {
      const power = powerAt(Math.round(places[Math.floor(at)]! * sampleRate));
      for (const [b, { fromHz, toHz }] of used.entries()) {
        let sum = 0;
        const last = Math.round((toHz * size) / sampleRate);
        for (let bin = Math.round((fromHz * size) / sampleRate); bin < last; bin++) sum += power[bin]!;
        all[b]!.push(10 * Math.log10(sum / size + leastPower));
      }
    }
    return all.map((one) => quantile(one, share));
  };
  const inPauses = levels(quiet.pauses);
  const inPlay = levels(times);
  const sinks = inPauses.flatMap((levelDb, b) => (inPlay[b]! < nothingDb ? [] : [levelDb - inPlay[b]!]));
  return sinks.length === 0 ? Number.NaN : Math.max(...sinks);
}
