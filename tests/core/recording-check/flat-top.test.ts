import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { soundPass } from '../../../src/core/recording-check/sound-pass.ts';
import { memorySource } from '../../bench/bench-take.ts';
import { oversampled } from '../../fixtures/generator/oversample.ts';
import { describeOutside } from '../../outside.ts';

interface TruePeakCase {
  readonly case: number;
  /** As a part of the sample rate, such as `fs/4`. */
  readonly freq: string;
  readonly amp: number;
  readonly phase_deg: number;
  readonly true_peak_dBTP: number;
}

/** Tolerance of EBU Tech 3341 for a true peak, dB. */
const tolerance = { above: 0.2, below: 0.4 };

const sine = (amplitude: number, cyclesASample: number, degrees: number, length: number): Float32Array =>
  Float32Array.from(
    { length },
    (_, i) => amplitude * Math.sin(2 * Math.PI * cyclesASample * i + (degrees * Math.PI) / 180),
  );
const decibels = (x: number): number => 20 * Math.log10(x);
const expectWithin = (db: number, truth: number): void => {
  expect(db).toBeLessThanOrEqual(truth + tolerance.above);
  expect(db).toBeGreaterThanOrEqual(truth - tolerance.below);
};

describeOutside('peaks of EBU Tech 3341', ['true_peak_signals.json'], (folder) => {
  const { fs, cases } = JSON.parse(readFileSync(join(folder, 'true_peak_signals.json'), 'utf8')) as {
    fs: number;
    cases: TruePeakCase[];
  };

  it.each(cases)('case $case: its true peak is seen between the samples, and nothing is cut', (one) => {
    const samples = sine(one.amp, 1 / Number(one.freq.slice('fs/'.length)), one.phase_deg, 4096);
    const middle = oversampled(samples).slice(4096, -4096);
    expectWithin(decibels(Math.max(...middle.map(Math.abs))), one.true_peak_dBTP);
    // Above full scale between its samples, but no sample is cut off.
    expect(soundPass(memorySource(samples, fs), 0).flatTops).toEqual([]);
  });

  const loudest = cases.reduce((a, b) => (b.amp > a.amp ? b : a));
  // Where strokes have most of their power; at 2 kHz a top has three to six samples and reads 0.75 dB low.
  it.each([100, 200, 440, 1000])(
    'a sine of %d Hz with the peak of the loudest, cut at full scale, is told to go beyond by as much',
    (hz) => {
      const whole = sine(loudest.amp, hz / fs, loudest.phase_deg, fs);
      const cut = whole.map((x) => Math.min(1, Math.max(-1, x)));
      const tops = soundPass(memorySource(cut, fs), 0).flatTops;
      expect(tops.length).toBeGreaterThan(1.9 * hz);
      const over = tops.map(({ overDb }) => overDb).sort((a, b) => a - b);
      expectWithin(over[over.length >> 1]!, loudest.true_peak_dBTP);
      expect(
        soundPass(
          memorySource(
            whole.map((x) => x / 2),
            fs,
          ),
          0,
        ).flatTops,
      ).toEqual([]);
    },
  );
});
