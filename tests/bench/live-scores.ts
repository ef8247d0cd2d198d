import { hearStrokes } from '../../src/core/onsets/hear-strokes.ts';
import { type LiveStroke, liveStrokes } from '../../src/core/onsets/live-strokes.ts';
import { growingSource } from '../../src/core/signal/growing-source.ts';
import { matchEvents } from './match-events.ts';
import { followPower, nothingFollowed } from './power-rises.ts';

/** Frames of a block as the page's audio thread hands them over. */
const blockFrames = 1024;
/** Within this a stroke told live is the one that the end of the take finds, s. */
const window = 0.01;

export interface ToldStroke extends LiveStroke {
  /** s after it was struck that it was told. */
  readonly delay: number;
  /** Whether the end of the take finds a stroke or a click there. */
  readonly found: boolean;
}

/** Events told live against those that the end of the take finds. */
export interface LiveScore {
  readonly found: number;
  readonly told: number;
  readonly met: number;
  /** Told, and a stroke or a click of the metronome. */
  readonly real: number;
}

/** What is told live of a take, by the program and by rises of power alone, held against the take heard at its end. */
export function scoreLive(samples: Float32Array, sampleRate: number) {
  const coming = growingSource(sampleRate);
  const live = liveStrokes();
  const told: (LiveStroke & { readonly delay: number })[] = [];
  const simple: number[] = [];
  let power = nothingFollowed;
  for (let at = 0; at < samples.length; at += blockFrames) {
    const block = samples.subarray(at, at + blockFrames);
    coming.add(at, block);
    const now = (at + block.length) / sampleRate;
    told.push(...live.goOn(coming.source()).strokes.map((one) => ({ ...one, delay: now - one.time })));
    const step = followPower(power, block, sampleRate);
    power = step.hearing;
    simple.push(...step.strokes.map(({ time }) => time));
  }
  const { sounds } = hearStrokes(coming.source());
  const timesOf = (wanted: (sound: string) => boolean) =>
    sounds.filter(({ sound }) => wanted(sound)).map(({ time }) => time);
  const pads = timesOf((sound) => sound === 'pad');
  const real = timesOf((sound) => sound === 'pad' || sound === 'click');
  const score = (times: readonly number[], within: number): LiveScore => ({
    found: pads.length,
    told: times.length,
    met: matchEvents(pads, times, within).length,
    real: times.filter((time) => real.some((one) => Math.abs(one - time) < within)).length,
  });
  return {
    program: score(
      told.map(({ time }) => time),
      window,
    ),
    // Its times are those of hops of 3 ms, early by what the first of an attack is too soft for.
    powerAlone: score(simple, 2 * window),
    told: told.map(
      (one): ToldStroke => ({ ...one, found: real.some((time) => Math.abs(time - one.time) < window) }),
    ),
  };
}
