import { describe, expect, it } from 'vitest';
import { clickSound } from '../../../fixtures/generator/click-sound.ts';
import { seeded } from '../../../fixtures/generator/random.ts';
import { strokeKinds } from '../../../fixtures/generator/stroke-kinds.ts';
import { synthesiseStroke } from '../../../fixtures/generator/stroke-sound.ts';
import { clickSeeds, soundLead } from '../../../src/core/click/click-seed.ts';
import type { Source } from '../../../src/core/signal/source.ts';
import { floatSource, watchedSource } from '../../support/float-source.ts';

const rate = 48_000;

type Sound = (fraction: number, n: number) => Float64Array;
const clicks: Sound = (fraction) => clickSound('beep', false, -12, fraction, rate).samples;
const strokes: Sound = (fraction, n) =>
  synthesiseStroke(strokeKinds['rubber-pad'], {
    sampleRate: rate,
    fraction,
    levelDb: -12,
    softDb: 0,
    tiltDb: 0,
    random: seeded(n),
  }).samples;

/** Sounds at these times (s), and the attacks as they are found. */
function recording(times: readonly number[], sound: Sound) {
  const samples = new Float32Array(Math.ceil(((times.at(-1) ?? 0) + 1) * rate));
  times.forEach((time, n) => {
    const base = Math.floor(time * rate);
    sound(time * rate - base, n).forEach((value, i) => {
      samples[base + i]! += value;
    });
  });
  const attacks = times.map((time) => ({ time, levelDb: -15 }));
  return { source: floatSource(rate, samples), attacks };
}

const every = (period: number, count: number) => Array.from({ length: count }, (_, k) => 0.5 + k * period);
const seeds = (source: Source, attacks: readonly { time: number; levelDb: number }[], most = 10) => [
  ...clickSeeds(source, attacks, most),
];

describe('clickSeeds', () => {
  it('finds like sounds at equal intervals, their start with them', () => {
    const { source, attacks } = recording(every(0.6, 6), clicks);
    const [first] = seeds(source, attacks);
    expect(first!.time).toBeCloseTo(0.5, 6);
    expect(first!.period).toBeCloseTo(0.6, 6);
    // The onset lies 38.4 samples into it.
    const lead = soundLead * rate;
    const exact = clicks(lead % 1, 0);
    first!.sound.subarray(Math.floor(lead)).forEach((value, n) => {
      expect(Math.abs(value - exact[n]!)).toBeLessThan(0.002);
    });
  });

  it('hands over as many as asked of each kind', () => {
    const { source, attacks } = recording(every(0.5, 20), clicks);
    expect(seeds(source, attacks, 3).length).toBeLessThanOrEqual(6);
    expect(seeds(source, attacks, 3).length).toBeGreaterThanOrEqual(3);
  });

  it('is not taken in by evenness alone: strokes at perfectly equal times sound different', () => {
    const { source, attacks } = recording(every(0.5, 20), strokes);
    expect(seeds(source, attacks)).toEqual([]);
  });

  it('is not taken in by likeness alone: the same sound at uneven times', () => {
    const { source, attacks } = recording([0.5, 1.01, 1.493, 2.02, 2.507, 3.033], clicks);
    expect(seeds(source, attacks)).toEqual([]);
  });

  it.each([
    ['too fast', 0.2],
    ['too slow', 1.8],
  ])('knows no metronome that is %s', (_, period) => {
    // Faster than 250 a minute, every second and third of them is a metronome too: so only three are heard.
    const { source, attacks } = recording(every(period, 3), clicks);
    expect(seeds(source, attacks)).toEqual([]);
  });

  it('wants one level', () => {
    const { source, attacks } = recording(every(0.6, 6), clicks);
    const uneven = attacks.map(({ time }, n) => ({ time, levelDb: -15 - 4 * (n % 3) }));
    for (const { period } of seeds(source, uneven)) expect(period).toBeCloseTo(1.8, 1);
    expect(seeds(source, uneven.slice(0, 3))).toEqual([]);
  });

  it('costs no more for an hour of even strokes than for some minutes', () => {
    const { source, attacks } = recording(every(0.25, 40), strokes);
    const many = Array.from({ length: 4000 }, (_, n) => ({
      time: attacks[n % 40]!.time + Math.floor(n / 40) * 10,
      levelDb: -15,
    }));
    let reads = 0;
    const counted: Source = {
      ...watchedSource(source).source,
      read(channel, from, to) {
        reads++;
        return source.read(channel, from, to);
      },
    };
    seeds(counted, many);
    expect(reads).toBeLessThan(2500);
  });

  it('has none of nothing', () => {
    expect(seeds(floatSource(rate, new Float32Array(100)), [])).toEqual([]);
  });
});
