import { describe, expect, it } from 'vitest';
import { pickup } from '../../../src/core/signal/pickup.ts';
import { floatSource, watchedSource } from '../../support/float-source.ts';
import { whiteNoise } from '../../support/signals.ts';

const rate = 44_100;
const length = 3 * rate;
const sound = whiteNoise(length, 0.1, 1);
const other = whiteNoise(length, 0.1, 2);
const times = (samples: Float32Array, gain: number) => samples.map((value) => gain * value);
const heard = (...channels: Float32Array[]) => pickup(floatSource(rate, ...channels)).read(0, 1000, 1400);
const part = (samples: Float32Array) => samples.slice(1000, 1400);

describe('pickup', () => {
  it('leaves one channel as it is', () => {
    const source = floatSource(rate, sound);
    expect(pickup(source)).toBe(source);
  });

  it('takes the mean of channels that agree', () => {
    expect(heard(sound, sound)).toEqual(part(sound));
    const mean = heard(sound, times(sound, 0.5));
    part(sound).forEach((value, n) => {
      expect(mean[n]).toBeCloseTo(0.75 * value, 6);
    });
  });

  it.each([
    ['silent', times(sound, 0)],
    ['all but dead', times(other, 0.01)],
    ['reversed', times(sound, -0.9)],
    ['of another place', times(other, 0.9)],
  ])('takes the louder channel alone where the other is %s', (_, second) => {
    expect(heard(sound, second)).toEqual(part(sound));
    expect(heard(second, sound)).toEqual(part(sound));
  });

  it('adds channels that share most of their sound, whichever comes first', () => {
    const near = sound.map((value, n) => value + 0.3 * other[n]!);
    const far = sound.map((value, n) => value - 0.3 * other[n]!);
    const both = heard(near, far);
    part(sound).forEach((value, n) => {
      expect(both[n]).toBeCloseTo(value, 6);
    });
    heard(far, near).forEach((value, n) => {
      expect(value).toBeCloseTo(both[n]!, 7);
    });
  });

  it('serves more than two channels, and any order of them', () => {
    const sources = [sound, times(sound, 0.8), times(sound, 0.6)];
    const first = heard(...sources);
    part(sound).forEach((value, n) => {
      expect(first[n]).toBeCloseTo(0.8 * value, 6);
    });
    heard(sources[2]!, sources[0]!, sources[1]!).forEach((value, n) => {
      expect(value).toBeCloseTo(first[n]!, 7);
    });
    expect(heard(times(sound, 0), sound, times(sound, 0))).toEqual(part(sound));
  });

  it('judges by short looks, not by the whole recording', () => {
    const { source, longestRead } = watchedSource(floatSource(rate, sound, other));
    pickup(source);
    expect(longestRead()).toBeLessThan(0.1 * length);
  });

  it('bears a recording shorter than a look, and a silent one', () => {
    const short = whiteNoise(500, 0.1, 3);
    expect(pickup(floatSource(rate, short, short)).read(0, 0, 500)).toEqual(short);
    const silent = new Float32Array(5000);
    expect(pickup(floatSource(rate, silent, silent)).read(0, 0, 5000)).toEqual(silent);
  });
});
