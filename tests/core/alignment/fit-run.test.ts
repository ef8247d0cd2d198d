import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fitRun } from '../../../src/core/alignment/fit-run.ts';
import { describeOutside } from '../../outside.ts';
import { seeded } from './seeded.ts';

describe('fitRun', () => {
  it('is not moved by one stray', () => {
    expect(fitRun([1, 1.5, 2.9, 2.5, 3], [0, 1, 2, 3, 4])!.period.toFixed(2)).toBe('0.50');
  });

  it('needs two strokes on different beats', () => {
    expect(fitRun([], [])).toBeNull();
    expect(fitRun([1], [0])).toBeNull();
    expect(fitRun([1, 2], [3, 3])).toBeNull();
  });

  it('reads an exact line exactly, whatever the spacing', () => {
    const beats = [0, 1 / 3, 2 / 3, 1, 4, 4.5, 9];
    const fit = fitRun(
      beats.map((beat) => 2 + 0.6 * beat),
      beats,
    )!;
    expect(fit.origin).toBeCloseTo(2, 12);
    expect(fit.period).toBeCloseTo(0.6, 12);
    expect(fit.spread).toBeLessThan(1e-9);
  });

  it('keeps the tempo with a tenth of the strokes 0.1 s off', () => {
    const random = seeded(1);
    const beats = Array.from({ length: 120 }, (_, i) => i / 3);
    const times = beats.map(
      (beat) => 0.5 * beat + 0.008 * random.normal() + (random.uniform() < 0.1 ? 0.1 : 0),
    );
    const fit = fitRun(times, beats)!;
    expect(Math.abs(fit.period - 0.5)).toBeLessThan(0.0005);
    expect(fit.spread).toBeGreaterThan(0.006);
    expect(fit.spread).toBeLessThan(0.012);
  });
});

describeOutside('a certified line (NIST StRD Norris)', ['nist/Norris.dat'], (folder) => {
  it('lies within two of its standard errors: weighing strays down is not least squares, but near', () => {
    const rows = readFileSync(join(folder, 'nist/Norris.dat'), 'utf8').split('\n').slice(60);
    const points = rows
      .map((row) => row.trim().split(/\s+/).map(Number))
      .filter(([y, x]) => y !== undefined && x !== undefined);
    expect(points).toHaveLength(36);
    points.sort((a, b) => a[1]! - b[1]!);
    const fit = fitRun(
      points.map(([y]) => y!),
      points.map(([, x]) => x!),
    )!;
    expect(Math.abs(fit.period - 1.00211681802045)).toBeLessThan(2 * 0.429796848199937e-3);
    expect(Math.abs(fit.origin + 0.262323073774029)).toBeLessThan(2 * 0.232818234301152);
  });
});
