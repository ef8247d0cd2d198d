import { describe, expect, it } from 'vitest';
import { meterAtRest, meterStep } from '../../../../src/page/recording/meter/level-meter.ts';

const rate = 48000;
const sine = (size: number, seconds: number) =>
  Float32Array.from({ length: seconds * rate }, (_, n) => size * Math.sin((2 * Math.PI * 1000 * n) / rate));

describe('meterStep', () => {
  it('gives the example of its comment', () => {
    expect(meterStep(meterAtRest, Float32Array.of(0.5, -0.5), rate).levels.peakDb).toBeCloseTo(-6.02, 2);
  });

  it("shows a sine's root mean square 3.01 dB under its peak", () => {
    const { peakDb, rmsDb, clipped } = meterStep(meterAtRest, sine(0.5, 3), rate).levels;
    expect(peakDb).toBeCloseTo(-6.02, 2);
    expect(peakDb - rmsDb).toBeCloseTo(3.01, 1);
    expect(clipped).toBe(false);
  });

  it('holds a peak for a second and a half, then lets it go', () => {
    let meter = meterStep(meterAtRest, sine(0.8, 0.1), rate);
    const after = (seconds: number) => {
      for (let n = 0; n < seconds * 10; n++) meter = meterStep(meter, sine(0.01, 0.1), rate);
      return meter.levels.heldDb;
    };
    expect(after(1.3)).toBeCloseTo(-1.94, 1);
    expect(after(0.4)).toBeCloseTo(-40, 1);
  });

  it('tells a flat top, across blocks too, from a single sample at full scale', () => {
    const full = 32767 / 32768;
    const single = meterStep(meterAtRest, Float32Array.of(0, full, 0, full, 0), rate);
    expect(single.levels.clipped).toBe(false);
    const begun = meterStep(meterAtRest, Float32Array.of(0, full, full), rate);
    expect(begun.levels.clipped).toBe(false);
    const cut = meterStep(begun, Float32Array.of(full, 0), rate);
    expect(cut.levels.clipped).toBe(true);
    expect(meterStep(cut, sine(0.1, 0.1), rate).levels.clipped).toBe(true);
  });
});
