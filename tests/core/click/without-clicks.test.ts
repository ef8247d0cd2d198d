import { describe, expect, it } from 'vitest';
import type { FoundClicks } from '../../../src/core/click/find-clicks.ts';
import { withoutClicks } from '../../../src/core/click/without-clicks.ts';
import { floatSource } from '../../support/float-source.ts';
import { clickScenarios, renderedClicks } from '../../support/rendered-clicks.ts';
import { toDb, whiteNoise } from '../../support/signals.ts';

/** How much of a click is looked at, s. */
const heard = 0.3;

describe('a take without its clicks', () => {
  it.each(clickScenarios)('is as it would have been with the loudspeaker off: %s', (name) => {
    const { source, silent, truth, found } = renderedClicks(name, 7303);
    const clean = withoutClicks(source, found!);
    const off = silent();
    let [own, left] = [0, 0];
    for (const time of truth.clicks) {
      const from = Math.round((time - 0.002) * source.sampleRate);
      const to = from + Math.round(heard * source.sampleRate);
      const [struck, cleaned, alone] = [source, clean, off].map((take) => take.read(0, from, to));
      for (let n = 0; n < alone!.length; n++) {
        own += (struck![n]! - alone![n]!) ** 2;
        left += (cleaned![n]! - alone![n]!) ** 2;
      }
    }
    expect(toDb(left / own)).toBeLessThan(-35);
  });
});

describe('withoutClicks', () => {
  const rate = 8000;
  const samples = whiteNoise(rate, 0.1, 1);
  const sound = Float32Array.from({ length: 400 }, (_, n) => Math.exp(-n / 60) * Math.sin(n));
  const times = [0.0131, 0.25003, 0.5, 0.98];
  const found: FoundClicks = {
    period: 0.25,
    times,
    voices: [{ sound, times, learnedFrom: 4, heardAlone: true }],
  };
  const clean = withoutClicks(floatSource(rate, samples), found);

  it('reads the same in any pieces, forwards and backwards', () => {
    const whole = clean.read(0, 0, rate);
    const edges = [0, 1, 90, 130, 1999, 2000, 2350, 3994, 4100, 7800, 7900, rate];
    const pieces = edges.slice(1).map((to, i) => [edges[i]!, to] as const);
    for (const [from, to] of [...pieces, ...pieces.toReversed()]) {
      expect(clean.read(0, from, to)).toEqual(whole.slice(from, to));
    }
  });

  it('touches nothing away from the clicks', () => {
    expect(clean.read(0, 3000, 3900)).toEqual(samples.slice(3000, 3900));
    expect({ ...clean, read: null }).toEqual({ sampleRate: rate, channels: 1, length: rate, read: null });
  });

  it('leaves the recording itself as it was', () => {
    const kept = samples.slice();
    clean.read(0, 0, rate);
    expect(samples).toEqual(kept);
  });
});
