import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { seeded } from '../../fixtures/generator/random.ts';
import { encodeWav } from '../../fixtures/generator/wav-file.ts';
import { outsideFolder } from '../outside.ts';
import { describeProgram, programPath } from '../programs.ts';
import { benchTake } from './bench-take.ts';
import { readOneShot } from './one-shot-file.ts';
import { realKinds, realStrokes, realTake, realTakes, variedStrokes } from './real-strokes.ts';

const ringing = (start: number, hz: number) =>
  Float32Array.from({ length: 30_000 }, (_, i) => {
    const t = (i - start) / 48000;
    return t < 0 ? 0 : 0.4 * Math.sin(2 * Math.PI * hz * t) * Math.exp(-t / 0.05);
  });

it('makes strokes that are never twice the same, at the level asked for', () => {
  const make = variedStrokes(
    [{ samples: ringing(0, 300), sampleRate: 48000 }],
    [
      { samples: ringing(0, 310), sampleRate: 48000 },
      { samples: ringing(0, 320), sampleRate: 48000 },
    ],
  );
  const request = { sampleRate: 48000, fraction: 0.3, levelDb: -12, softDb: 0, tiltDb: 0 };
  const [one, other] = [1, 2].map((seed) => make({ ...request, random: seeded(seed) }));
  expect(Array.from(one!.samples.slice(0, 400))).not.toEqual(Array.from(other!.samples.slice(0, 400)));
  const peak = one!.samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  expect(Math.abs(20 * Math.log10(peak) + 12)).toBeLessThan(0.1);
  expect(one!.samples[0]).toBe(0);
});

it('plays every accent on the loud layer of a take', () => {
  const kind = variedStrokes(
    [{ samples: ringing(0, 300), sampleRate: 48000 }],
    [{ samples: ringing(0, 600), sampleRate: 48000 }],
  );
  const { truth } = benchTake('', '', realTake(kind, realTakes[0], 1));
  expect(truth.strokes).toHaveLength(48);
  const accents = truth.strokes.filter(({ accent }) => accent).map(({ peakDb }) => peakDb);
  const taps = truth.strokes.filter(({ accent }) => !accent).map(({ peakDb }) => peakDb);
  expect(Math.min(...accents)).toBeGreaterThan(Math.max(...taps));
});

describeProgram('ffmpeg', 'recorded strokes as files', (ffmpeg) => {
  it('begin at 2 % of their peak and end in silence', () => {
    const folder = mkdtempSync(join(tmpdir(), 'one-shot-'));
    try {
      const path = join(folder, 'stroke.wav');
      writeFileSync(path, encodeWav(ringing(4800, 300), 48000));
      const { samples, sampleRate } = readOneShot(ffmpeg, path, 0.2);
      expect(sampleRate).toBe(48000);
      expect(samples).toHaveLength(9600);
      expect(samples[0]).toBeGreaterThan(0.0075);
      expect(samples.at(-1)).toBeCloseTo(0, 6);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it.skipIf(outsideFolder() === undefined)('are read from the folder of reference data', () => {
    const kind = realKinds.find(({ name }) => name === 'finger clap')!;
    const make = realStrokes(programPath('ffmpeg')!, kind)!;
    const { truth } = benchTake('', '', realTake(make, realTakes[1], 1));
    expect(truth.strokes.every(({ peakDb }) => Number.isFinite(peakDb))).toBe(true);
  });
});
