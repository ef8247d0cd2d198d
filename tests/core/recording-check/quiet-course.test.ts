import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { quietCourse } from '../../../src/core/recording-check/quiet-course.ts';
import { soundPass } from '../../../src/core/recording-check/sound-pass.ts';
import { floatSource } from '../../support/float-source.ts';

const sampleRate = 48_000;
/** Strokes from the second second to the fifth. */
const sounds = Array.from({ length: 20 }, (_, i) => ({
  time: 2 + 0.15 * i,
  levelDb: -20,
  sound: 'pad' as const,
}));

/** Two seconds of quiet, strokes after it, none behind; `gain` at each time, s, on hiss of 0.001. */
function courseOf(gain: (time: number, random: ReturnType<typeof seeded>) => number) {
  const random = seeded('quiet');
  const samples = Float32Array.from(
    { length: 5 * sampleRate },
    (_, i) => 0.001 * gain(i / sampleRate, random) * random.normal(),
  );
  return quietCourse(soundPass(floatSource(sampleRate, samples), 0), sounds);
}

describe('the quiet before the first stroke', () => {
  it('is a pause where it is steady, and where a gain rises in it', () => {
    const steady = courseOf(() => 1);
    expect(steady.pauses.length).toBeGreaterThan(80);
    // White noise of σ 0.001: the step from sample to sample has the power 2σ².
    expect(steady.pauseDb).toBeCloseTo(10 * Math.log10(2e-6), 0);
    expect(courseOf((time) => 10 ** (Math.min(time, 2) / 4)).pauses.length).toBeGreaterThan(80);
  });

  it('may last for hours', () => {
    const [frames, frameRate] = [4 * 3600 * 1000, 1000];
    const hiss = {
      sampleRate,
      hop: 48,
      frameRate,
      power: 1e-6,
      flatTops: [],
      standStills: [],
      repeats: [],
      jumps: [],
    };
    const mean = Float32Array.from({ length: frames }, (_, i) => (i % 2 === 0 ? 1e-3 : -1e-3));
    const bright = new Float32Array(frames).fill(2e-6);
    const { pauses, pauseDb } = quietCourse({ ...hiss, mean, bright }, sounds.slice(0, 1));
    expect(pauses.length).toBeGreaterThan(700_000);
    expect(pauseDb).toBeCloseTo(10 * Math.log10(2e-6), 3);
  });

  it('is none where somebody rustles', () => {
    let loud = 1;
    let until = 0;
    const rustling = courseOf((time, random) => {
      if (time >= 2) return 1;
      if (time >= until) {
        loud = 10 ** random.uniform();
        until = time + 0.03;
      }
      return loud;
    });
    expect(rustling.pauses).toEqual([]);
    expect(rustling.pauseDb).toBeNaN();
  });
});
