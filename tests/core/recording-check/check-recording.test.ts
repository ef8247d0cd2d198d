import { describe, expect, it } from 'vitest';
import { addHum } from '../../../fixtures/generator/damage/add-hum.ts';
import { clip } from '../../../fixtures/generator/damage/clip.ts';
import { type DropOutKind, dropOut } from '../../../fixtures/generator/damage/drop-out.ts';
import { narrowBand } from '../../../fixtures/generator/damage/narrow-band.ts';
import { suppressNoise } from '../../../fixtures/generator/damage/suppress-noise.ts';
import { throughChain } from '../../../fixtures/generator/damage/through-chain.ts';
import { addNoise } from '../../../fixtures/generator/noise.ts';
import { seeded } from '../../../fixtures/generator/random.ts';
import { renderTake } from '../../../fixtures/generator/render-take.ts';
import { scenario } from '../../../fixtures/generator/scenarios.ts';
import { gradeTake } from '../../../src/core/grade-take.ts';
import { recordingChecks } from '../../../src/core/recording-check/check-recording.ts';
import { findingSentence, sentence } from '../../../src/core/result/sentences.ts';
import type { TakeResult } from '../../../src/core/result/take-result.ts';
import type { Source } from '../../../src/core/signal/source.ts';
import { memorySource } from '../../bench/bench-take.ts';
import { found, gradeSamples } from './grade-samples.ts';

const clean = scenario('clean-120', 8);
const take = renderTake(clean.spec);
const damaged = (spoil: (samples: Float32Array, sampleRate: number) => Float32Array): TakeResult =>
  gradeSamples(spoil(take.samples, take.sampleRate), take.sampleRate, clean.sheet);
const noisy = (levelDb: number) => (samples: Float32Array, sampleRate: number) => {
  const out = Float64Array.from(samples);
  addNoise(out, 'pink', levelDb, sampleRate, seeded('noise'));
  return Float32Array.from(out);
};
const chain = (parts: Parameters<typeof throughChain>[2]) => (samples: Float32Array, sampleRate: number) =>
  throughChain(samples, sampleRate, parts, seeded('chain'));
const dropped = (kind: DropOutKind) => (samples: Float32Array, sampleRate: number) =>
  dropOut(samples, sampleRate, { kind, ms: 40, aMinute: 60 }, seeded('drop')).samples;

describe('the check of a recording', () => {
  /** With rates in `reports/recording-check.md`; strengths here are well beyond where they are found. */
  it.each([
    ['clipped', 'accent-spread', (samples: Float32Array) => clip(samples, 8)],
    ['clipped', 'accent-spread', (samples: Float32Array) => clip(samples, 8, 0.6)],
    ['dc-offset', null, (samples: Float32Array) => samples.map((x) => x + 0.03)],
    [
      'hum',
      null,
      (samples: Float32Array, rate: number) => addHum(samples, rate, { hz: 50, levelDb: -45, harmonics: 6 }),
    ],
    [
      'hum',
      null,
      (samples: Float32Array, rate: number) => addHum(samples, rate, { hz: 60, levelDb: -45, harmonics: 0 }),
    ],
    ['drop-outs', null, dropped('silence')],
    ['drop-outs', null, dropped('repeated')],
    ['drop-outs', 'timing-spread', dropped('lost')],
    [
      'narrow-band',
      null,
      (samples: Float32Array, rate: number) => narrowBand(samples, rate, { lowHz: 300, highHz: 3400 }),
    ],
    ['noisy', null, noisy(-41)],
    ['taps-near-noise', null, noisy(-41)],
    [
      'gain-control',
      'accent-to-tap-ratio',
      chain({ gainControl: { thresholdDb: -34, ratio: 4, attackMs: 4, releaseMs: 260, makeUpDb: 4 } }),
    ],
    [
      'gated',
      'missed',
      chain({ gate: { thresholdDb: -26, floorDb: -45, attackMs: 1.5, holdMs: 40, releaseMs: 60 } }),
    ],
    [
      'spectral-holes',
      'tap-spread',
      (samples: Float32Array, rate: number) =>
        suppressNoise(samples, rate, { depthDb: 30, marginDb: 18, openMs: 60 }),
    ],
  ] as const)('finds: %s, spoiling %s', (code, spoils, spoil) => {
    const result = damaged(spoil as (samples: Float32Array, sampleRate: number) => Float32Array);
    const finding = found(result, code);
    expect(finding, JSON.stringify(result.recording.check)).toBeDefined();
    expect(findingSentence(finding!)).toMatch(/\. /);
    if (spoils === null) return;
    expect(finding!.spoils).toContain(spoils);
    if (result.grading.state !== 'graded') return;
    const whole = result.measures.find(({ id, scope }) => id === spoils && Object.keys(scope).length === 0);
    expect(whole!.outcome).toMatchObject({ state: 'not-measurable', reason: { code: `spoiled-${code}` } });
    expect(sentence({ code: `spoiled-${code}`, facts: finding!.facts })).toBe(sentence(finding!));
  });

  it('tells where sound was lost', () => {
    const { samples, at } = dropOut(
      take.samples,
      take.sampleRate,
      { kind: 'silence', ms: 60, aMinute: 1 },
      seeded('one'),
    );
    const finding = found(gradeSamples(samples, take.sampleRate, clean.sheet), 'drop-outs');
    expect(finding!.facts.at).toBeCloseTo(at[0]!, 1);
  });

  it('looks at every channel', () => {
    const { samples, sampleRate } = take;
    const cut = clip(samples, 10, 0.5);
    const stereo: Source = {
      ...memorySource(samples, sampleRate),
      channels: 2,
      read: (channel, from, to) => memorySource(channel === 0 ? samples : cut, sampleRate).read(0, from, to),
    };
    expect(found(gradeTake(stereo, clean.sheet), 'clipped')).toBeDefined();
  });

  it.each([
    ['silence', new Float32Array(20_000)],
    ['one sample', Float32Array.of(0.5)],
    ['a square wave at full scale', Float32Array.from({ length: 48_000 }, (_, i) => (i % 100 < 50 ? 1 : -1))],
  ])('stands %s', (_, samples) => {
    const result = gradeSamples(samples, 48_000, clean.sheet);
    expect(result.grading.state).toBe('not-gradable');
    for (const finding of result.recording.check!)
      expect(findingSentence(finding)).not.toMatch(/NaN|Infinity|undefined/);
  });

  it('has one finding a check', () => {
    expect(new Set(recordingChecks).size).toBe(recordingChecks.length);
  });
});
