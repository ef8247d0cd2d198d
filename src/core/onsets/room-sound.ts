import { covariancePrediction } from '../signal/covariance-prediction.ts';
import { energyOf } from '../signal/energy-of.ts';
import { predictionResidual } from '../signal/prediction-residual.ts';
import type { Source } from '../signal/source.ts';
import { median } from '../stats/median.ts';
import type { Stroke } from './stroke.ts';
import { toStrokeBand } from './stroke-band.ts';

/** What the sound after loud strokes tells of the room. */
export interface RoomSound {
  /**
   * How far under the sound lies what a prediction leaves of it, dB. A pad or drum rings in a few vibrations, which a
   * prediction knows (20 dB and more); a room answers with thousands (about 10).
   */
  readonly predictedDb: number;
  /** Energy of the stroke's first 4 ms against that of the next 8, dB: far under nothing where reflections lead. */
  readonly directDb: number;
}

/** As many of the take's loudest strokes are listened to. */
const most = 10;
/** The next sound comes no sooner, s. */
const aloneSeconds = 0.06;
/** The sound that is predicted, s from the onset on. */
const ringing = { from: 0.004, to: 0.05 };
const direct = { to: 0.004, next: 0.012 };
/** Sound read before the onset, s: the filters' start. */
const beforeSeconds = 0.01;
/** Order of the prediction. Measured: 16 to 64 give the same times and levels on 25 rendered takes. */
const order = 32;

/** Medians over the loudest strokes that stand alone (`sounds` in order of time); null if none does. */
export function roomSound(source: Source, sounds: readonly Stroke[]): RoomSound | null {
  const alone = sounds.filter(
    ({ sound, time }, i) =>
      sound === 'pad' && (sounds[i + 1]?.time ?? Number.POSITIVE_INFINITY) - time >= aloneSeconds,
  );
  const loudest = alone.sort((a, b) => b.levelDb - a.levelDb).slice(0, most);
  if (loudest.length === 0) return null;
  const heard = loudest.map(({ time }) => afterStroke(source, time));
  return {
    predictedDb: median(heard.map(({ predictedDb }) => predictedDb)),
    directDb: median(heard.map(({ directDb }) => directDb)),
  };
}

function afterStroke(source: Source, time: number): RoomSound {
  const start = Math.round((time - beforeSeconds) * source.sampleRate);
  const samples = source.read(
    0,
    start,
    start + Math.round((beforeSeconds + aloneSeconds) * source.sampleRate),
  );
  const { count, rate } = toStrokeBand(samples, source.sampleRate);
  const at = (seconds: number) => Math.min(count, Math.round((beforeSeconds + seconds) * rate));
  const from = at(ringing.from) + order;
  const to = at(ringing.to);
  const residual = predictionResidual(covariancePrediction(samples, from, to, order), samples, from, to);
  return {
    predictedDb: decibels(energyOf(samples, from, to), energyOf(residual)),
    directDb: decibels(
      energyOf(samples, at(0), at(direct.to)),
      energyOf(samples, at(direct.to), at(direct.next)),
    ),
  };
}

const decibels = (a: number, b: number) => 10 * Math.log10((a + 1e-14) / (b + 1e-14));
