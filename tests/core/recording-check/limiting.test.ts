import { describe, expect, it } from 'vitest';
import { throughChain } from '../../../fixtures/generator/damage/through-chain.ts';
import { seeded } from '../../../fixtures/generator/random.ts';
import { readSheet } from '../../../fixtures/generator/read-sheet.ts';
import { renderTake } from '../../../fixtures/generator/render-take.ts';
import { findingSentence } from '../../../src/core/result/sentences.ts';
import { checkTakeSpec, tuningTakes } from '../../bench/check-takes.ts';
import { found, gradeSamples } from './grade-samples.ts';

describe('limiting', () => {
  it('finds a limiter by how accents die away where a drum rings over the hiss', () => {
    const { sheet, spec } = checkTakeSpec(tuningTakes.find(({ name }) => name === 'snare')!, 13);
    const { samples, sampleRate } = renderTake(spec);
    const limiter = { thresholdDb: -24, ratio: 20, attackMs: 0.5, releaseMs: 80, makeUpDb: 4 };
    const finding = found(
      gradeSamples(
        throughChain(samples, sampleRate, { gainControl: limiter }, seeded('chain')),
        sampleRate,
        sheet,
      ),
      'limited',
    );
    expect(finding!.spoils).toContain('accent-to-tap-ratio');
    expect(findingSentence(finding!)).toMatch(/limiter/);
    expect(found(gradeSamples(samples, sampleRate, sheet), 'limited')).toBeUndefined();
  });

  it.each([
    ['as a hand scatters', 1.5],
    ['by a steady hand', 0.7],
    ['by a very steady hand', 0.5],
  ])('takes accents that ring longer than taps, as rim shots do, for no limiter: %s', (_, scatterDb) => {
    const random = seeded('rim shots');
    const rate = 48_000;
    const { sheet } = readSheet('tempo: 100\n>RLR >LRL ; times: 12');
    const samples = Float32Array.from({ length: 16 * rate }, () => 0.0003 * random.normal());
    for (let i = 0; i < 72; i++) {
      const accent = i % 3 === 0;
      const level = 10 ** (((accent ? -8 : -22) + scatterDb * random.normal()) / 20);
      const [start, ring] = [Math.round((1 + i / 5) * rate), accent ? 0.09 : 0.03];
      for (let k = 0; k < 0.4 * rate; k++) {
        const t = k / rate;
        const body = Math.sin(2 * Math.PI * 260 * t) * Math.exp(-t / ring);
        samples[start + k]! += level * (body + 0.6 * random.normal() * Math.exp(-t / 0.004));
      }
    }
    const result = gradeSamples(samples, rate, sheet);
    expect(result.strokes.role.filter((role) => role === 'matched')).toHaveLength(72);
    expect(found(result, 'limited')).toBeUndefined();
  });
});
