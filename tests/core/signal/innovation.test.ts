import { describe, expect, it } from 'vitest';
import { innovationPower, innovationState } from '../../../src/core/signal/innovation.ts';
import { power, toDb, whiteNoise } from '../../support/signals.ts';

const rate = 3000;
const perFrame = 3;
const settings = { order: 20, past: 180, blockFrames: 10, quiet: 1e-8 };

/** A head that was struck at `start`: two vibrations that beat. */
function ringing(length: number, start: number, amplitude: number): Float32Array {
  return Float32Array.from({ length }, (_, n) => {
    if (n < start) return 0;
    const t = (n - start) / rate;
    const vibrations = Math.cos(2 * Math.PI * 195 * t) + 0.6 * Math.cos(2 * Math.PI * 311 * t + 1);
    return amplitude * Math.exp(-t / 0.11) * vibrations;
  });
}

const framePower = (samples: Float32Array) =>
  Float32Array.from({ length: samples.length / perFrame }, (_, f) =>
    power(samples, f * perFrame, (f + 1) * perFrame),
  );

function innovation(samples: Float32Array, quiet = settings.quiet): Float32Array {
  const state = innovationState(settings.order, settings.past, settings.blockFrames * perFrame);
  return innovationPower(state, samples, samples.length, framePower(samples), perFrame, quiet);
}

const add = (a: Float32Array, b: Float32Array) => a.map((value, n) => value + b[n]!);
const noise = (length: number) => whiteNoise(length, 1e-4, 1);

describe('the innovation', () => {
  const length = 1800;

  it('takes ringing away by 20 dB and more', () => {
    const sound = add(ringing(length, 0, 0.3), noise(length));
    const fresh = innovation(sound);
    const raw = framePower(sound);
    const from = 100;
    expect(toDb(power(fresh.map(Math.sqrt), from, 300) / power(raw.map(Math.sqrt), from, 300))).toBeLessThan(
      -20,
    );
  });

  it('keeps a stroke 30 dB under the first that the ringing hides', () => {
    const second = 900;
    const sound = add(add(ringing(length, 0, 0.3), ringing(length, second, 0.01)), noise(length));
    const raw = framePower(sound);
    const fresh = innovation(sound);
    const before = power(fresh.map(Math.sqrt), second / perFrame - 30, second / perFrame);
    const struck = Math.max(...fresh.subarray(second / perFrame, second / perFrame + 4));
    expect(toDb(struck / before)).toBeGreaterThan(10);
    const rawBefore = power(raw.map(Math.sqrt), second / perFrame - 30, second / perFrame);
    const rawStruck = Math.max(...raw.subarray(second / perFrame, second / perFrame + 4));
    expect(toDb(rawStruck / rawBefore)).toBeLessThan(6);
  });

  it('is never above the power itself, nor under a five-hundredth of it', () => {
    const sound = add(ringing(length, 300, 0.5), whiteNoise(length, 0.01, 2));
    const raw = framePower(sound);
    innovation(sound).forEach((value, frame) => {
      expect(value).toBeLessThanOrEqual(raw[frame]!);
      expect(value).toBeGreaterThanOrEqual(0.00199 * raw[frame]!);
    });
  });

  it('leaves alone what is quiet', () => {
    const sound = add(ringing(length, 0, 0.3), noise(length));
    expect(innovation(sound, 1)).toEqual(framePower(sound));
  });

  it('is the same from one long block and from two', () => {
    const sound = add(ringing(length, 150, 0.3), noise(length));
    const state = innovationState(settings.order, settings.past, settings.blockFrames * perFrame);
    const halves = [0, 900].flatMap((from) => {
      const half = sound.slice(from, from + 900);
      return [...innovationPower(state, half, 900, framePower(half), perFrame, settings.quiet)];
    });
    const whole = innovation(sound);
    halves.forEach((value, frame) => {
      expect(value).toBeCloseTo(whole[frame]!, 9);
    });
  });
});
