import { expect, it } from 'vitest';
import { overStep } from '../../../src/core/onsets/over-step.ts';
import { heardSound } from '../../support/heard-sound.ts';

it('leaves out what may be the flicker of a step, not what is clear or loud', () => {
  const coarse = { step: 1 / 128, still: true };
  const kept = [
    heardSound(1, { levelDb: -40, evidence: 12 }),
    heardSound(2, { levelDb: -49, evidence: 40 }),
    heardSound(3, { levelDb: -60, evidence: 5, sound: 'click' }),
  ];
  const flicker = heardSound(4, { levelDb: -47, evidence: 16 });
  expect(overStep([...kept, flicker], coarse)).toEqual(kept);
});
