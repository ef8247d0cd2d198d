import { renderTake } from '../../fixtures/generator/render-take.ts';
import { type ScenarioName, scenario } from '../../fixtures/generator/scenarios.ts';
import type { TakeTruth } from '../../fixtures/generator/take-truth.ts';
import { type FoundClicks, findClicks } from '../../src/core/click/find-clicks.ts';
import { attacksOf } from '../../src/core/onsets/attack-search.ts';
import type { Source } from '../../src/core/signal/source.ts';
import { floatSource } from './float-source.ts';

/** Scenarios with a click that counts in alone. */
export const clickScenarios = [
  'click-10',
  'click-20-bell',
  'click-30',
  'click-count-in-only',
  'click-in-room',
  'click-small-speaker',
  'late-start',
] as const satisfies readonly ScenarioName[];

/** A take with a click and the clicks found in it. */
export interface RenderedClicks {
  readonly source: Source;
  /** The very same take with the loudspeaker off. */
  silent(): Source;
  readonly truth: TakeTruth;
  readonly found: FoundClicks | null;
  readonly beat: number;
}

export function renderedClicks(name: ScenarioName, seed: number): RenderedClicks {
  const { spec } = scenario(name, seed);
  const { samples, sampleRate, truth } = renderTake(spec);
  const source = floatSource(sampleRate, samples);
  const silent = () => {
    const click = spec.click && { ...spec.click, levelDb: -300 };
    return floatSource(sampleRate, renderTake({ ...spec, click }).samples);
  };
  const found = findClicks(source, attacksOf(source).attacks);
  return { source, silent, truth, found, beat: 60 / spec.bpm };
}
