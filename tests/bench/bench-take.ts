import { renderTake } from '../../fixtures/generator/render-take.ts';
import { strokeKinds } from '../../fixtures/generator/stroke-kinds.ts';
import {
  type StrokeRequest,
  type StrokeSound,
  synthesiseStroke,
} from '../../fixtures/generator/stroke-sound.ts';
import type { TakeSpec } from '../../fixtures/generator/take-spec.ts';
import type { TakeTruth } from '../../fixtures/generator/take-truth.ts';
import { levelPastSeconds, levelSeconds, strokeLevel } from '../../src/core/onsets/stroke-level.ts';
import type { Source } from '../../src/core/signal/source.ts';

/** A rendered take and what a perfect ear would hear in it. */
export interface BenchTake {
  readonly name: string;
  readonly group: string;
  readonly samples: Float32Array;
  readonly sampleRate: number;
  readonly truth: TakeTruth;
  /** For each stroke of the truth: a level of that stroke alone, before room, noise and microphone, dBFS. */
  readonly dryLevels: readonly number[];
}

/** Level of a stroke that stands alone in silence, from the samples and the place of the onset among them. */
export type DryLevel = (samples: Float32Array, sampleRate: number, onset: number) => number;

/** Silence before the stroke and sound after its onset that a level may look at, s. */
export const dryWindow = { before: levelPastSeconds, after: 0.06 };

/** The program's own definition of a stroke's level. */
export const ownDryLevel: DryLevel = (samples, sampleRate, onset) => {
  const length = Math.ceil(onset + (levelSeconds + 0.004) * sampleRate);
  return strokeLevel(samples.slice(0, length), sampleRate, onset, 0).levelDb;
};

/** Renders a take; each stroke's level is taken by `level` from its dry sound alone. */
export function benchTake(name: string, group: string, spec: TakeSpec, level = ownDryLevel): BenchTake {
  const { kind } = spec;
  const make = typeof kind === 'function' ? kind : synthesiseStroke.bind(null, strokeKinds[kind]);
  const dryLevels: number[] = [];
  const heard = (request: StrokeRequest): StrokeSound => {
    const sound = make(request);
    const { sampleRate, fraction } = request;
    const before = Math.ceil(dryWindow.before * sampleRate);
    const alone = new Float32Array(before + Math.ceil(dryWindow.after * sampleRate));
    const shown = sound.samples.subarray(0, alone.length - before - sound.first);
    alone.set(shown, before + sound.first);
    dryLevels.push(level(alone, sampleRate, before + fraction));
    return sound;
  };
  const { samples, sampleRate, truth } = renderTake({ ...spec, kind: heard });
  return { name, group, samples, sampleRate, truth, dryLevels };
}

/** Samples in memory as a recording. */
export function memorySource(samples: Float32Array, sampleRate: number): Source {
  const read = (_: number, from: number, to: number): Float32Array => {
    const out = new Float32Array(to - from);
    const first = Math.max(0, from);
    if (first < to) out.set(samples.subarray(first, Math.min(to, samples.length)), first - from);
    return out;
  };
  return { sampleRate, channels: 1, length: samples.length, read };
}
