import { describe, expect, it } from 'vitest';
import { describeProgram } from '../programs.ts';
import { bestShift, throughCodec } from './codec.ts';
import { levelCandidates } from './level-candidates.ts';
import { levelErrors } from './level-errors.ts';
import { levelsReport } from './levels-report.ts';
import { recordingChains } from './recording-chains.ts';

describe('ways to measure a level', () => {
  it('agree with the stroke alone where nothing comes between', () => {
    const [clean] = recordingChains;
    const errors = levelErrors(clean!, [1], levelCandidates, undefined);
    expect(errors).toHaveLength(levelCandidates.length);
    for (const { spreadDb, ratioDb, afterAccentDb } of errors) {
      expect(spreadDb).toBeLessThan(0.1);
      expect(Math.abs(ratioDb)).toBeLessThan(0.05);
      expect(Math.abs(afterAccentDb)).toBeLessThan(0.05);
    }
    const text = levelsReport([clean!], [errors], levelCandidates, [1]);
    expect(text.match(/^\| the program's own/gm)).toHaveLength(4);
    expect(text).not.toMatch(/NaN|undefined/);
  });

  it('follow a gain and a full-scale sine', () => {
    const samples = Float32Array.from({ length: 48000 * 0.14 }, (_, i) =>
      i < 3840 ? 0 : Math.sin((2 * Math.PI * 1000 * (i - 3840)) / 48000),
    );
    const window = { rate: 48000, onset: 3840, pastFrom: 0 };
    for (const { name, level } of levelCandidates) {
      const loud = level({ ...window, samples });
      const soft = level({ ...window, samples: samples.map((x) => x / 10) });
      expect(loud - soft, name).toBeCloseTo(20, 2);
      expect(Math.abs(loud), name).toBeLessThan(1);
    }
  });
});

it('bestShift finds how much later a sound is', () => {
  const original = Float32Array.from({ length: 3000 }, (_, i) => (i === 700 || i === 1501 ? 1 : 0));
  const moved = Float32Array.from({ length: 3000 }, (_, i) => original[i - 312] ?? 0);
  expect(bestShift(original, moved)).toBe(312);
});

describeProgram('ffmpeg', 'codecs', (ffmpeg) => {
  it.each(recordingChains.flatMap(({ codec }) => codec ?? []))('$encoder keeps its place', (codec) => {
    const sine = Float32Array.from({ length: 24_000 }, (_, i) =>
      i < 9000 ? 0 : 0.5 * Math.sin((i - 9000) / 9) * Math.exp((9000 - i) / 3000),
    );
    const decoded = throughCodec(ffmpeg, sine, 48000, codec);
    expect(decoded).toHaveLength(sine.length);
    const left = sine.reduce((sum, x, i) => sum + (x - decoded[i]!) ** 2, 0);
    expect(left).toBeLessThan(0.05 * sine.reduce((sum, x) => sum + x * x, 0));
  });
});
