import { describe, expect, it } from 'vitest';
import { clip } from '../../../fixtures/generator/damage/clip.ts';
import { seeded } from '../../../fixtures/generator/random.ts';
import { renderTake } from '../../../fixtures/generator/render-take.ts';
import { scenario } from '../../../fixtures/generator/scenarios.ts';
import { findingSentence } from '../../../src/core/result/sentences.ts';
import { found, gradeSamples } from './grade-samples.ts';

/** A take at a peak, dBFS, in 8 bits; `hidden` by triangular noise of a step either way before they are made. */
function eightBits(samples: Float32Array, peakDb: number, hidden: boolean): Float32Array {
  const random = seeded('dither');
  const gain = 10 ** (peakDb / 20) / samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  const noise = () => (hidden ? random.uniform() - random.uniform() : 0);
  return samples.map((x) => Math.min(127, Math.max(-128, Math.round(128 * gain * x + noise()))) / 128);
}

describe('recordings of 8 bits', () => {
  it.each([
    ['snare', -6, false],
    ['snare', -18, false],
    ['soft-pad', -6, false],
    ['clean-120', -18, true],
    ['tom', -6, true],
  ] as const)(
    'are told, with no other fault and every stroke found: %s at %i dBFS, dithered %s',
    (name, peakDb, hidden) => {
      const { sheet, spec } = scenario(name, 131);
      const { samples, sampleRate } = renderTake(spec);
      const result = gradeSamples(eightBits(samples, peakDb, hidden), sampleRate, sheet);
      expect(result.recording.check!.map(({ code }) => code)).toEqual(['coarse-samples']);
      expect(findingSentence(found(result, 'coarse-samples')!)).toMatch(/8 bits.* -42 dBFS/);
      expect(result.strokes.role).toEqual(Array(48).fill('matched'));
    },
  );

  it('refuse levels where taps hardly stand over the steps, and keep times', () => {
    const { sheet, spec } = scenario('soft-pad', 131);
    const { samples, sampleRate } = renderTake(spec);
    const result = gradeSamples(eightBits(samples, -18, true), sampleRate, sheet);
    const stateOf = (id: string) =>
      result.measures.find((one) => one.id === id && Object.keys(one.scope).length === 0)!.outcome;
    expect(stateOf('tap-spread')).toMatchObject({ reason: { code: 'spoiled-coarse-samples' } });
    expect(stateOf('timing-spread').state).toBe('measured');
  });

  it.each([
    ['phone', []],
    ['snare-fast', ['missed', 'tap-spread']],
  ] as const)('are not taken for limited, nor counts told of taps under a step: %s', (name, refused) => {
    const { sheet, spec } = scenario(name, 133);
    const { samples, sampleRate } = renderTake(spec);
    const result = gradeSamples(eightBits(samples, -18, false), sampleRate, sheet);
    expect(result.recording.check!.map(({ code }) => code)).toEqual(['coarse-samples']);
    expect(found(result, 'coarse-samples')!.spoils).toEqual(
      refused.length === 0 ? [] : expect.arrayContaining([...refused]),
    );
  });

  it('are found cut where they are', () => {
    const { sheet, spec } = scenario('clean-120', 131);
    const { samples, sampleRate } = renderTake(spec);
    const result = gradeSamples(eightBits(clip(samples, 10), 0, false), sampleRate, sheet);
    expect(found(result, 'clipped')).toBeDefined();
  });
});
