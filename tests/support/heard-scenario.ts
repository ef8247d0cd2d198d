import { renderTake } from '../../fixtures/generator/render-take.ts';
import { type ScenarioName, scenario } from '../../fixtures/generator/scenarios.ts';
import type { TakeTruth, TruthStroke } from '../../fixtures/generator/take-truth.ts';
import { hearStrokes } from '../../src/core/onsets/hear-strokes.ts';
import type { Hearing, Stroke } from '../../src/core/onsets/stroke.ts';
import type { Source } from '../../src/core/signal/source.ts';
import { matchEvents } from '../bench/match-events.ts';
import { floatSource } from './float-source.ts';

/** A rendered scenario and what is heard in it. */
export interface HeardScenario {
  readonly source: Source;
  readonly truth: TakeTruth;
  readonly hearing: Hearing;
  readonly pads: readonly Stroke[];
  /** Strokes played, without a stick's own bounces. */
  readonly played: readonly TruthStroke[];
  /** Strokes played and heard within 10 ms, one to one. */
  readonly pairs: readonly { readonly played: TruthStroke; readonly heard: Stroke }[];
}

const window = 0.01;
const kept = new Map<string, HeardScenario>();

/** Renders a scenario with a seed and hears it; the same again comes from memory. */
export function heardScenario(name: ScenarioName, seed: number): HeardScenario {
  const key = `${name} ${seed}`;
  const known = kept.get(key);
  if (known !== undefined) return known;
  const { samples, sampleRate, truth } = renderTake(scenario(name, seed).spec);
  const source = floatSource(sampleRate, samples);
  const hearing = hearStrokes(source);
  const heard = { source, truth, hearing, ...against(truth, hearing) };
  kept.set(key, heard);
  return heard;
}

/** Strokes of a hearing held against what was played. */
export function against(
  truth: TakeTruth,
  hearing: Hearing,
): Pick<HeardScenario, 'pads' | 'played' | 'pairs'> {
  const pads = hearing.sounds.filter(({ sound }) => sound === 'pad');
  const played = truth.strokes.filter(({ role }) => role !== 'bounce');
  const matched = matchEvents(timesOf(played), timesOf(pads), window);
  const pairs = matched.map(({ reference, estimate }) => ({
    played: played[reference]!,
    heard: pads[estimate]!,
  }));
  return { pads, played, pairs };
}

/** Recall, precision and F of several takes taken together. */
export function pooled(takes: readonly HeardScenario[]): { recall: number; precision: number; f: number } {
  const count = (value: (take: HeardScenario) => number) => takes.reduce((sum, take) => sum + value(take), 0);
  const found = count(({ pairs }) => pairs.length);
  const [played, heard] = [count((take) => take.played.length), count((take) => take.pads.length)];
  return { recall: found / played, precision: found / heard, f: (2 * found) / (played + heard) };
}

export const timesOf = (events: readonly { readonly time: number }[]): number[] =>
  events.map(({ time }) => time);
