import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { commonSound } from '../../../src/core/click/put-click-sound.ts';
import { clickSamples } from '../../../src/core/click-track/click-samples.ts';
import { clickVoice } from '../../../src/core/click-track/click-voices.ts';
import { floatSource } from '../../support/float-source.ts';

const rate = 24_000;
const voice = clickSamples(clickVoice('wood', 'beat', false), rate);

/** Clicks at whole samples, more than half of them with a thump ten times as loud within a few milliseconds of them. */
function struck(clicks: number, thumps: boolean) {
  const random = seeded('thumps');
  const samples = new Float32Array((clicks + 1) * 0.7 * rate);
  const starts = Array.from({ length: clicks }, (_, i) => Math.round((0.2 + 0.7 * i) * rate));
  for (let n = 0; n < samples.length; n++) samples[n] = 1e-4 * random.normal();
  for (const start of starts) {
    voice.forEach((x, n) => {
      samples[start + n]! += 0.03 * x;
    });
    if (!thumps || random.chance(0.4)) continue;
    const at = start + Math.round(random.normal(0, 0.008) * rate);
    for (let n = 0; n < 0.08 * rate; n++)
      samples[at + n]! += 0.3 * Math.sin((2 * Math.PI * 300 * n) / rate) * Math.exp(-n / (0.015 * rate));
  }
  const sound = commonSound(
    floatSource(rate, samples),
    starts.map((start) => start / rate),
    4800,
  );
  const off = voice.reduce((sum, x, n) => sum + (0.03 * x - sound[n]!) ** 2, 0);
  const all = voice.reduce((sum, x) => sum + (0.03 * x) ** 2, 0);
  return { sound, leftDb: 10 * Math.log10(off / all) };
}

describe('commonSound', () => {
  it('is what clicks have in common, and ends where they do', () => {
    const { sound, leftDb } = struck(20, false);
    expect(leftDb).toBeLessThan(-30);
    expect(sound.findLastIndex((x) => x !== 0)).toBeLessThan(2 * voice.length);
  });

  it('is found under strokes ten times as loud', () => {
    expect(struck(40, true).leftDb).toBeLessThan(-20);
  });
});
