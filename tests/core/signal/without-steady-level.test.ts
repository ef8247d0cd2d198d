import { describe, expect, it } from 'vitest';
import type { Source } from '../../../src/core/signal/source.ts';
import { withoutSteadyLevel } from '../../../src/core/signal/without-steady-level.ts';

const length = 96_000;
const sourceOf = (at: (i: number) => number): Source => ({
  sampleRate: 48_000,
  channels: 1,
  length,
  read: (_, from, to) =>
    Float32Array.from({ length: to - from }, (_, i) =>
      from + i < 0 || from + i >= length ? 0 : at(from + i),
    ),
});

describe('withoutSteadyLevel', () => {
  it('takes a steady level off and leaves the sound and the silence outside', () => {
    const tone = (i: number) => 0.1 * Math.sin((2 * Math.PI * 440 * i) / 48_000);
    const clean = withoutSteadyLevel(sourceOf((i) => tone(i) + 0.05));
    const samples = clean.read(0, -10, 100);
    for (let i = 0; i < 10; i++) expect(samples[i]).toBe(0);
    for (let i = 10; i < 110; i++) expect(Math.abs(samples[i]! - tone(i - 10))).toBeLessThan(0.001);
    expect([...clean.read(0, length, length + 3)]).toEqual([0, 0, 0]);
  });

  it('hands a recording without one on as it is', () => {
    const source = sourceOf((i) => 0.2 * Math.sin(i / 7));
    expect(withoutSteadyLevel(source)).toBe(source);
  });
});
