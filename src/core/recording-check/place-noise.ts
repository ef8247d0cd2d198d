import { strokesFromHz } from '../onsets/stroke-band.ts';
import { applyHighPass, highPass } from '../signal/high-pass.ts';
import { lowSound } from '../signal/low-sound.ts';
import type { Source } from '../signal/source.ts';
import { withStepNoise } from '../signal/step-noise.ts';
import { quantile } from '../stats/quantile.ts';
import { pause } from './quiet-course.ts';

const mostWindows = 32;
/** Time for the filter to settle, s. */
const settleSeconds = 0.012;
/** Where there are no pauses: just before strokes, s. */
const beforeStroke = 0.025;
/** A place sounds the same in pauses; before strokes only the quieter part is the place's. */
const share = { pauses: 0.5, strokes: 0.1 };

/**
 * Level of the place by itself, in the band and on the scale of strokes' levels, dBFS; NaN for nothing to listen to.
 */
export function placeNoiseDb(source: Source, pauses: readonly number[], strokes: readonly number[]): number {
  const enough = pauses.length >= pause.fewest;
  const places = enough ? pauses : strokes.map((time) => time - beforeStroke);
  if (places.length === 0) return Number.NaN;
  const step = Math.max(1, Math.floor(places.length / mostWindows));
  const powers = places
    .filter((_, i) => i % step === 0)
    .map((at) => {
      const { rate, samples } = lowSound(source, at - settleSeconds, at + pause.windowSeconds);
      applyHighPass(highPass(strokesFromHz, rate), samples, samples.length);
      const from = Math.round(settleSeconds * rate);
      let sum = 0;
      for (let i = from; i < samples.length; i++) sum += samples[i]! ** 2;
      return sum / Math.max(1, samples.length - from);
    });
  return 10 * Math.log10(2 * quantile(powers, enough ? share.pauses : share.strokes) + 1e-14);
}

/** What the steps of coarse samples come to by themselves, on the same scale and at the same places, dBFS. */
export function stepNoiseDb(
  source: Source,
  step: number,
  pauses: readonly number[],
  strokes: readonly number[],
): number {
  const silence = { ...source, read: (_: number, from: number, to: number) => new Float32Array(to - from) };
  return placeNoiseDb(withStepNoise(silence, { step, still: true }), pauses, strokes);
}
