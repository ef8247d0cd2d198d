import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { twoFloors } from '../../../src/core/recording-check/two-floors.ts';

const frameRate = 1000;
const seconds = 10;

/** Frames of hiss at −92 dB; every second one sound of −40 dB, whose course is given, dB over it by ms since its onset. */
function place(courseDb: (ms: number) => number): { bright: Float32Array; frameRate: number } {
  const random = seeded('floors');
  const bright = Float32Array.from({ length: seconds * frameRate }, (_, i) => {
    const hiss = 10 ** ((-92 + 0.8 * random.normal()) / 10);
    const ms = (i % frameRate) - 300;
    return ms < 0 ? hiss : hiss + 10 ** (courseDb(ms) / 10);
  });
  return { bright, frameRate };
}
const strokes = Array.from({ length: seconds }, (_, second) => ({ time: second + 0.3, sound: 'pad' }));
const dying = (ms: number) => -40 - 0.5 * ms;

describe('two floors', () => {
  it('show where a gate holds the floor open behind each sound', () => {
    const gated = place((ms) => (ms < 150 ? Math.max(dying(ms), -72) : -72 - 1.4 * (ms - 150)));
    expect(twoFloors(gated, -92, strokes)).toBe(seconds);
  });

  it('are asked for behind strokes on the pad alone', () => {
    const gated = place((ms) => (ms < 150 ? Math.max(dying(ms), -72) : -72 - 1.4 * (ms - 150)));
    const talk = strokes.map(({ time }, i) => ({ time, sound: i < 4 ? 'voice' : 'pad' }));
    expect(twoFloors(gated, -92, talk)).toBe(seconds - 4);
    expect(twoFloors(gated, -92, [])).toBe(0);
  });

  it('are none where sounds die away to one floor', () => {
    expect(twoFloors(place(dying), -92, strokes)).toBe(0);
    expect(
      twoFloors(
        place((ms) => Math.max(dying(ms), -72 - 0.1 * ms)),
        -92,
        strokes,
      ),
    ).toBe(0);
  });

  it('are none of a tone that holds its level and breaks off, as a click does', () => {
    expect(
      twoFloors(
        place((ms) => (ms < 60 ? -60 : Number.NEGATIVE_INFINITY)),
        -92,
        strokes,
      ),
    ).toBe(0);
  });

  it('are none of a beep that swells, falls to its level and breaks off behind a click', () => {
    const beep = place((ms) => (ms < 60 ? Math.max(-40 - ms, -62) : Number.NEGATIVE_INFINITY));
    const clicks = Array.from({ length: seconds }, (_, second) => second + 0.3);
    expect(twoFloors(beep, -92, strokes)).toBe(seconds);
    expect(twoFloors(beep, -92, strokes, clicks)).toBe(0);
    expect(twoFloors(beep, -92, strokes, clicks.slice(1))).toBe(1);
  });

  it('are none where pauses are unknown, or nothing is recorded', () => {
    expect(twoFloors(place(dying), Number.NaN, strokes)).toBe(0);
    expect(twoFloors({ bright: new Float32Array(0), frameRate }, -92, strokes)).toBe(0);
  });
});
