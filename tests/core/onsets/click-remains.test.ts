import { describe, expect, it } from 'vitest';
import { soundLead } from '../../../src/core/click/click-seed.ts';
import type { ClickVoice } from '../../../src/core/click/find-clicks.ts';
import { clickRemains } from '../../../src/core/onsets/click-remains.ts';
import { strokeLevel } from '../../../src/core/onsets/stroke-level.ts';
import { heardSound } from '../../support/heard-sound.ts';

const rate = 48_000;
const sound = Float32Array.from({ length: 0.2 * rate }, (_, n) => {
  const t = n / rate - soundLead;
  return t < 0 ? 0 : 0.1 * Math.sin(2 * Math.PI * 1000 * t) * Math.exp(-t / 0.03);
});
const voice: ClickVoice = { sound, times: [1, 1.5, 2, 2.5], learnedFrom: 12, heardAlone: true };

/** Level of the click itself at its start and later, dBFS. */
const clickDb = (after: number) => {
  const from = Math.round((soundLead + after) * rate);
  const samples = new Float32Array(4800);
  samples.set(sound.subarray(from, from + 960), 3840);
  return strokeLevel(samples, rate, 3840, 0).levelDb;
};

const at = (after: number, underDb: number) => heardSound(1.5 + after, { levelDb: clickDb(after) - underDb });

describe('clickRemains', () => {
  const isRemains = clickRemains(voice, rate);

  it.each([0, 0.01, 0.05])('knows what is left of a click %f s after its start, far under it', (after) => {
    expect(isRemains(at(after, 40))).toBe(true);
    expect(isRemains(at(after, 32))).toBe(true);
  });

  it.each([0, 0.01, 0.05])('leaves a stroke %f s after its start alone', (after) => {
    expect(isRemains(at(after, 18))).toBe(false);
    expect(isRemains(at(after, 0))).toBe(false);
  });

  it('has no say where no click sounds', () => {
    expect(isRemains(heardSound(0.9, { levelDb: -90 }))).toBe(false);
    expect(isRemains(heardSound(1.3, { levelDb: -90 }))).toBe(false);
    expect(isRemains(heardSound(1.45, { levelDb: -90 }))).toBe(false);
    expect(isRemains(heardSound(2.8, { levelDb: -90 }))).toBe(false);
  });

  it('trusts a sound learned from few clicks, or never heard alone, less far down', () => {
    const seldom = clickRemains({ ...voice, learnedFrom: 1 }, rate);
    const seams = clickRemains({ ...voice, heardAlone: false }, rate);
    expect(isRemains(at(0, 23))).toBe(false);
    expect(seams(at(0, 23))).toBe(true);
    expect(seams(at(0, 12))).toBe(false);
    expect(seldom(at(0, 17))).toBe(true);
    expect(seldom(at(0, 8))).toBe(false);
  });
});
