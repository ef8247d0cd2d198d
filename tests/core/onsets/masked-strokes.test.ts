import { describe, expect, it } from 'vitest';
import { practisedPlayer } from '../../../fixtures/generator/player.ts';
import { seeded } from '../../../fixtures/generator/random.ts';
import { type ScenarioName, scenario } from '../../../fixtures/generator/scenarios.ts';
import { findMasked } from '../../../src/core/onsets/masked-strokes.ts';
import type { Stroke } from '../../../src/core/onsets/stroke.ts';
import { realKinds, realStrokes, realTake, realTakes } from '../../bench/real-strokes.ts';
import { describeProgram } from '../../programs.ts';
import { floatSource } from '../../support/float-source.ts';
import { heardSound } from '../../support/heard-sound.ts';
import { maskedTake, pooledTally, tally } from '../../support/masked-take.ts';
import { whiteNoise } from '../../support/signals.ts';

const rate = 48_000;
const seeds = [8201, 8202];

/** Takes of a scenario with taps so far under the accents, and a share of the strokes left out. */
const takesOf = (name: ScenarioName, contrastDb: number, missed = 0) =>
  seeds.map((seed) => {
    const player = { ...practisedPlayer, accentDb: -8, tapDb: -8 - contrastDb, missed };
    return maskedTake({ ...scenario(name, seed).spec, player });
  });

/** Agreement before and after, within 10 ms unless told otherwise. */
function compared(takes: readonly ReturnType<typeof maskedTake>[], window = 0.01) {
  const tallied = (which: 'before' | 'after') =>
    pooledTally(takes.map((take) => tally(take.played, take[which], window)));
  return { before: tallied('before'), after: tallied('after') };
}

describe('taps in the ringing of recorded accents', () => {
  it('of a snare with rattling wires are heard by their first wave', () => {
    const takes = takesOf('recorded-snare', 20);
    const wide = compared(takes);
    const narrow = compared(takes, 0.003);
    expect(wide.after.f).toBeGreaterThan(0.98);
    expect(wide.after.f).toBeGreaterThanOrEqual(wide.before.f);
    expect(narrow.before.f).toBeLessThan(0.85);
    expect(narrow.after.f).toBeGreaterThan(0.98);
  });

  it.each(['recorded-middle-tom', 'recorded-low-tom'] as const)('of %s are found', (name) => {
    const { before, after } = compared(takesOf(name, 20));
    expect(before.f).toBeLessThan(0.92);
    expect(after.f).toBeGreaterThan(0.96);
  });

  it('of the high tom were heard before', () => {
    const { before, after } = compared(takesOf('recorded-high-tom', 20));
    expect(before.f).toBeGreaterThan(0.97);
    expect(after.f).toBeGreaterThanOrEqual(before.f);
  });

  it('that were never played are not invented', () => {
    const takes = (['recorded-snare', 'recorded-low-tom'] as const).flatMap((name) => takesOf(name, 20, 0.3));
    const { before, after } = compared(takes);
    const slots = takes.length * scenario('recorded-snare', 1).spec.slots.length;
    const dropped = slots - after.played;
    expect(dropped).toBeGreaterThan(40);
    // One in fifty places left out, and one on top of a small number.
    expect(after.invented - before.invented).toBeLessThanOrEqual(1 + dropped / 50);
    expect(after.found).toBeGreaterThanOrEqual(before.found);
  });
});

describe('a take that is clear', () => {
  it.each(['clean-120', 'snare', 'rim'] as const)('%s: has its very own strokes left in it', (name) => {
    const { before, after } = maskedTake(scenario(name, seeds[0]!).spec);
    expect(after).toHaveLength(before.length);
    after.forEach((stroke, i) => {
      expect(stroke).toBe(before[i]);
    });
  });

  it('may be of nothing, of a single stroke or of no stroke at all', () => {
    const source = floatSource(rate, whiteNoise(3 * rate, 0.01, 1));
    for (const sounds of [
      [],
      [heardSound(1)],
      [heardSound(1, { evidence: 20 }), heardSound(1.2, { evidence: 20 })],
      [heardSound(1, { sound: 'voice' as const })],
    ]) {
      expect(findMasked(source, sounds)).toEqual(sounds);
    }
  });

  it('may hold strokes in doubt in plain noise, and gets none more', () => {
    const source = floatSource(rate, whiteNoise(12 * rate, 0.01, 1));
    const sounds = Array.from({ length: 60 }, (_, i) =>
      heardSound(0.5 + 0.18 * i, { evidence: 30, levelDb: i % 3 === 0 ? -10 : -30 }),
    );
    expect(findMasked(source, sounds)).toEqual(sounds);
  });
});

describe('a row whose taps have a weak first wave and a strong second one', () => {
  const secondWave = 0.004;
  const interval = 0.16;
  const count = 60;

  /** Adds waves that swing at `hz` and die away within `decay` s from a time on, between the samples. */
  const addWave = (into: Float32Array, time: number, size: number, hz: number, decay: number) => {
    const from = Math.ceil(time * rate);
    for (let n = from; n < Math.min(into.length, from + 12 * decay * rate); n++) {
      const t = n / rate - time;
      into[n]! += size * Math.exp(-t / decay) * Math.cos(2 * Math.PI * hz * t);
    }
  };
  const random = seeded(8301);
  const samples = whiteNoise(Math.ceil((1 + count * interval + 0.5) * rate), 1e-5, 2);
  const onsets = Array.from({ length: count }, (_, i) => 0.5 + i * interval + random.normal(0, 0.004));
  const isAccent = (i: number) => i % 3 === 0;
  onsets.forEach((time, i) => {
    const size = (isAccent(i) ? 0.3 : 0.02) * 10 ** (random.normal(0, 1) / 20);
    addWave(samples, time, size, 1600, 0.0012);
    addWave(samples, time + secondWave, 2.5 * size, 900, 0.003);
    if (!isAccent(i)) return;
    // The wires' rattle after an accent, about as strong as a tap's first wave.
    for (let n = Math.ceil((time + secondWave) * rate); n < samples.length; n++) {
      const t = n / rate - time;
      if (t > 0.6) break;
      samples[n]! += size * 0.05 * Math.exp(-t / 0.12) * random.normal();
    }
  });
  const source = floatSource(rate, samples);
  const heard = onsets.map((time, i) => {
    const late = isAccent(i) ? 0 : secondWave;
    return heardSound(time + late, {
      evidence: isAccent(i) ? 500 : 40,
      levelDb: isAccent(i) ? -12 : -36,
      timeSe: 0.00002,
    });
  });

  it('has each tap put where its first wave is, and its accents left', () => {
    const after = findMasked(source, heard);
    expect(after).toHaveLength(count);
    const errors = after.map(({ time }, i) => time - onsets[i]!);
    const taps = errors.filter((_, i) => !isAccent(i));
    expect(taps.filter((error) => Math.abs(error) < 0.0005).length / taps.length).toBeGreaterThan(0.9);
    errors.forEach((error, i) => {
      if (isAccent(i)) expect(Math.abs(error)).toBeLessThan(0.0001);
    });
  });

  it('has a tap that was not heard found between the others', () => {
    const missing = new Set([10, 22, 34, 47]);
    const after = findMasked(
      source,
      heard.filter((_, i) => !missing.has(i)),
    );
    const near = (i: number) => after.filter(({ time }) => Math.abs(time - onsets[i]!) < 0.0005);
    for (const i of missing) expect(near(i)).toHaveLength(1);
    expect(after).toHaveLength(count);
  });

  it('has nothing added where a tap is missing from the sound too', () => {
    const at = 22;
    const silenced = samples.slice();
    // The tap's place holds what came a whole beat later, in the same tail: the rattle alone.
    const from = Math.round((onsets[at]! - 0.01) * rate);
    for (let n = from; n < from + 0.06 * rate; n++) silenced[n] = 0.003 * random.normal();
    const after = findMasked(
      floatSource(rate, silenced),
      heard.filter((_, i) => i !== at),
    );
    expect(after.filter(({ time }) => Math.abs(time - onsets[at]!) < 0.05)).toEqual([]);
  });

  it('has sounds of another class left where no stroke is', () => {
    const voice = heardSound(onsets[30]! + 0.08, { sound: 'voice', evidence: 200 });
    const sounds: Stroke[] = [...heard, voice].sort((a, b) => a.time - b.time);
    const after = findMasked(source, sounds);
    expect(after.filter(({ sound }) => sound === 'voice')).toEqual([voice]);
    expect(after.map(({ time }) => time)).toEqual(after.map(({ time }) => time).toSorted((a, b) => a - b));
  });
});

describeProgram('ffmpeg', 'taps in the ringing of real accents', (ffmpeg) => {
  const [slow, fast] = realTakes;
  const takes = [
    ['jazz snare', slow],
    ['rock snare', fast],
    ['old snare', fast],
    ['rimshot', fast],
  ] as const;
  const required = process.env.EVENHAND_REQUIRE_KITS === '1';
  for (const [name, take] of takes) {
    const make = realStrokes(ffmpeg, realKinds.find((kind) => kind.name === name)!);
    if (make === undefined) console.warn(`NOT CHECKED, the drum kits are not installed: taps of the ${name}`);
    const title = make === undefined ? `NOT CHECKED, kits missing: ${name}` : name;
    it.skipIf(make === undefined && !required)(`${title} at ${take.bpm} bpm`, () => {
      if (make === undefined) throw new Error(title);
      const { before, after } = compared([maskedTake(realTake(make, take, 8401))]);
      expect(before.f).toBeLessThan(0.96);
      expect(after.f).toBeGreaterThan(before.f + 0.03);
      expect(after.f).toBeGreaterThan(0.95);
    });
  }
});
