import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { hearLive, type LiveStroke, nothingHeard } from '../../../src/core/onsets/live-strokes.ts';
import { openedSample } from '../../support/opened-sample.ts';

const takes = new URL('../../../fixtures/takes/', import.meta.url);

/** What is heard of a sample take in blocks as an audio thread gives them. */
function heardLive(name: string, blockFrames: number): readonly LiveStroke[] {
  const { source } = openedSample(name);
  const found: LiveStroke[] = [];
  let hearing = nothingHeard;
  for (let from = 0; from < source.length; from += blockFrames) {
    const block = source.read(0, from, Math.min(source.length, from + blockFrames));
    const step = hearLive(hearing, block, source.sampleRate);
    hearing = step.hearing;
    found.push(...step.strokes);
  }
  return found;
}

interface Truth {
  readonly strokes: readonly { readonly time: number }[];
}
const truthOf = (name: string) =>
  JSON.parse(readFileSync(new URL(`${name}.truth.json`, takes), 'utf8')) as Truth;

describe('hearLive', () => {
  it.each(['accent-one', 'accent-two', 'two-accents', 'sloppy'])('hears nearly all of %s', (name) => {
    const { strokes } = truthOf(name);
    const found = heardLive(name, 2048);
    const met = strokes.filter(({ time }) => found.some((one) => Math.abs(one.time - time) < 0.02));
    expect(met.length / strokes.length).toBeGreaterThan(0.9);
  });

  it('hears most of a ringing snare', () => {
    const { strokes } = truthOf('recorded-snare');
    const found = heardLive('recorded-snare', 2048);
    const met = strokes.filter(({ time }) => found.some((one) => Math.abs(one.time - time) < 0.02));
    expect(met.length / strokes.length).toBeGreaterThan(0.6);
  });

  it('hears the same in blocks of any length', () => {
    expect(heardLive('accent-one', 128)).toEqual(heardLive('accent-one', 5000));
  });

  it('hears nothing in silence and in steady noise', () => {
    const noise = Float32Array.from({ length: 48_000 }, (_, i) => 0.01 * Math.sin(i * i * 0.7));
    const later = hearLive(nothingHeard, noise, 48_000).strokes.filter(({ time }) => time > 0.1);
    expect(later).toEqual([]);
    expect(hearLive(nothingHeard, new Float32Array(48_000), 48_000).strokes).toEqual([]);
  });
});
