import { expect, it } from 'vitest';
import { throughChain } from '../../../fixtures/generator/damage/through-chain.ts';
import { seeded } from '../../../fixtures/generator/random.ts';
import { renderTake } from '../../../fixtures/generator/render-take.ts';
import { checkTakeSpec, tuningTakes } from '../../bench/check-takes.ts';
import { found, gradeSamples } from './grade-samples.ts';

it('finds a gate that closes fast amid ringing, that lets a floor through for a while, or that taps do not open', () => {
  const gated = (name: string, thresholdDb: number) => {
    const { sheet, spec } = checkTakeSpec(tuningTakes.find((one) => one.name === name)!, 13);
    const { samples, sampleRate } = renderTake(spec);
    expect(found(gradeSamples(samples, sampleRate, sheet), 'gated')).toBeUndefined();
    const gate = { thresholdDb, floorDb: -25, attackMs: 1, holdMs: 30, releaseMs: 6 };
    return found(
      gradeSamples(throughChain(samples, sampleRate, { gate }, seeded('chain')), sampleRate, sheet),
      'gated',
    );
  };
  expect(gated('snare', -28)!.spoils).toContain('tap-spread');
  expect(gated('mesh, living room, phone', -44)!.spoils).toContain('tap-spread');
  expect(gated('rubber pad', -28)!.spoils).toContain('tap-spread');
});
