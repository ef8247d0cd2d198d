import { seeded } from '../../fixtures/generator/random.ts';
import { type KindName, strokeKinds } from '../../fixtures/generator/stroke-kinds.ts';
import { synthesiseStroke } from '../../fixtures/generator/stroke-sound.ts';
import { whiteNoise } from './signals.ts';

/** A synthesised stroke to be put into a recording. */
export interface MadeStroke {
  /** s. */
  readonly time: number;
  /** Peak, dBFS. */
  readonly levelDb: number;
  readonly kind?: KindName;
  /** dB under a full stroke (duller); 0 unless told. */
  readonly softDb?: number;
  /** Strokes with the same seed sound the same. */
  readonly seed: number;
}

/** Adds a stroke to `into`, its onset exactly at its time. */
export function addStroke(into: Float32Array, sampleRate: number, stroke: MadeStroke): void {
  const { time, levelDb, kind = 'rubber-pad', softDb = 0, seed } = stroke;
  const base = Math.floor(time * sampleRate);
  const { samples, first } = synthesiseStroke(strokeKinds[kind], {
    sampleRate,
    fraction: time * sampleRate - base,
    levelDb,
    softDb,
    tiltDb: 0,
    random: seeded(seed),
  });
  const from = base + first;
  for (let n = 0; n < samples.length && from + n < into.length; n++) into[from + n]! += samples[n]!;
}

/** Strokes in white noise of so many dBFS (RMS; 0 = RMS 1), `seconds` of it. */
export function strokesInNoise(
  seconds: number,
  sampleRate: number,
  strokes: readonly MadeStroke[],
  noiseDb = -80,
  seed = 1,
): Float32Array {
  const samples = whiteNoise(Math.round(seconds * sampleRate), 10 ** (noiseDb / 20), seed);
  for (const stroke of strokes) addStroke(samples, sampleRate, stroke);
  return samples;
}
