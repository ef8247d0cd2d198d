import { describe, expect, it } from 'vitest';
import type { Source } from '../../../src/core/signal/source.ts';
import { steadyLevel, withoutLevel } from '../../../src/core/signal/steady-level.ts';

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

describe('steadyLevel and withoutLevel', () => {
  it('takes a steady level off and leaves the sound and the silence outside', () => {
    const tone = (i: number) => 0.1 * Math.sin((2 * Math.PI * 440 * i) / 48_000);
    const source = sourceOf((i) => tone(i) + 0.05);
    expect(steadyLevel(source)).toBeCloseTo(0.05, 3);
    const clean = withoutLevel(source, steadyLevel(source));
    const samples = clean.read(0, -10, 100);
    for (let i = 0; i < 10; i++) expect(samples[i]).toBe(0);
    for (let i = 10; i < 110; i++) expect(Math.abs(samples[i]! - tone(i - 10))).toBeLessThan(0.001);
    expect([...clean.read(0, length, length + 3)]).toEqual([0, 0, 0]);
  });

  it('hands a recording without one on as it is', () => {
    const source = sourceOf((i) => 0.2 * Math.sin(i / 7));
    expect(steadyLevel(source)).toBe(0);
    expect(withoutLevel(source, 0)).toBe(source);
  });

  it('goes by the first eight seconds, unless the whole says otherwise', () => {
    const rate = 8000;
    const made = (level: (second: number) => number): Source => ({
      ...sourceOf(() => 0),
      sampleRate: rate,
      length: 60 * rate,
      read: (_, from, to) =>
        Float32Array.from({ length: to - from }, (_, i) => {
          const n = from + i;
          return level(n / rate) + 0.01 * Math.sin(n * n * 0.37);
        }),
    });
    const steady = made(() => 0.02);
    const opening = { ...steady, length: 8 * rate };
    expect(steadyLevel(steady)).toBe(steadyLevel(opening));
    expect(steadyLevel(made((second) => (second < 10 ? 0 : 0.02)))).toBeCloseTo(0.02, 3);
  });
});
