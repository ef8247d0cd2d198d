import { describe, expect, it } from 'vitest';
import { renderTake } from '../../../fixtures/generator/render-take.ts';
import { type ScenarioName, scenario } from '../../../fixtures/generator/scenarios.ts';
import { findClicks } from '../../../src/core/click/find-clicks.ts';
import { strokesAmong } from '../../../src/core/onsets/hear-strokes.ts';
import { riseCandidates } from '../../../src/core/onsets/rise-candidates.ts';
import type { Source } from '../../../src/core/signal/source.ts';
import { floatSource } from '../../support/float-source.ts';
import { clickScenarios, renderedClicks } from '../../support/rendered-clicks.ts';

const seeds = [7301, 7302] as const;
const clicksOf = (source: Source) => findClicks(source, strokesAmong(source, riseCandidates(source)));

describe.each(clickScenarios)('the clicks and bells of %s', (name) => {
  it.each(seeds)('are found one by one and exactly in time (seed %i)', (seed) => {
    const { truth, found, beat } = renderedClicks(name, seed);
    expect(found?.times).toHaveLength(truth.clicks.length);
    found!.times.forEach((time, k) => {
      expect(Math.abs(time - truth.clicks[k]!)).toBeLessThan(0.0001);
    });
    expect(Math.abs(found!.grid.period / beat - 1)).toBeLessThan(20e-6);
    const { click } = scenario(name, seed).spec;
    const firstBeat = truth.clicks[0]! + click!.countInBeats * beat;
    const isBell = (time: number) =>
      click!.bellEvery > 0 && Math.round((time - firstBeat) / beat) % click!.bellEvery === 0;
    expect(found!.voices[1]?.times ?? []).toEqual(found!.times.filter(isBell));
    expect(found!.voices.flatMap(({ times }) => times).sort((a, b) => a - b)).toEqual(found!.times);
  });
});

describe('findClicks', () => {
  const without: ScenarioName[] = ['clean-120', 'snare', 'rim', 'room-bare', 'noise-pink-50', 'burst-60-ms'];

  it.each(without)('finds none in %s', (name) => {
    const { samples, sampleRate } = renderTake(scenario(name, seeds[0]).spec);
    expect(clicksOf(floatSource(sampleRate, samples))).toBeNull();
  });

  it('finds none in the take of a player who is never off by a sample', () => {
    const { spec } = scenario('clean-120', 1);
    const timekeeping = { kind: 'independent', jitterMs: 0 } as const;
    const player = { ...spec.player, timekeeping, accentSpreadDb: 0, tapSpreadDb: 0 };
    const { samples, sampleRate } = renderTake({ ...spec, player });
    expect(clicksOf(floatSource(sampleRate, samples))).toBeNull();
  });

  it('finds none in silence or in nothing', () => {
    expect(findClicks(floatSource(48_000, new Float32Array(48_000)), [])).toBeNull();
    expect(findClicks(floatSource(48_000, new Float32Array(0)), [])).toBeNull();
  });
});
