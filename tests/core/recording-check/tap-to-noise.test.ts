import { describe, expect, it } from 'vitest';
import { addNoise } from '../../../fixtures/generator/noise.ts';
import { seeded } from '../../../fixtures/generator/random.ts';
import { renderTake } from '../../../fixtures/generator/render-take.ts';
import { gradeTake } from '../../../src/core/grade-take.ts';
import type { SoundClass } from '../../../src/core/onsets/stroke.ts';
import { faintSounds } from '../../../src/core/recording-check/faint-sounds.ts';
import type { HeardRecording } from '../../../src/core/recording-check/heard-recording.ts';
import { tapToNoise } from '../../../src/core/recording-check/tap-to-noise.ts';
import { memorySource } from '../../bench/bench-take.ts';
import { checkTakeSpec, reportTakes } from '../../bench/check-takes.ts';

const bars = 16;
/** One accent of −20 dBFS and two taps of −36 dBFS a beat; every `other`th tap was taken for something else. */
const sounds = (evidence: number, other = Number.POSITIVE_INFINITY) =>
  Array.from({ length: 3 * bars }, (_, i) => {
    const accent = i % 3 === 0;
    const tap = i - Math.floor(i / 3) - 1;
    const sound: SoundClass = !accent && tap % other === other - 1 ? 'voice' : 'pad';
    return { time: i / 6, levelDb: accent ? -20 : -36, evidence: accent ? 300 : evidence, sound };
  });

/** The same as a recording whose place is at `noiseDb`, everything that was taken for a stroke laid where it belongs. */
const heard = (evidence: number, noiseDb: number, other?: number) => {
  const all = sounds(evidence, other);
  const strokes = all.flatMap(({ sound, levelDb }, i) =>
    sound === 'pad' ? [{ levelDb, slot: { accent: i % 3 === 0 } }] : [],
  );
  return {
    hearing: { sounds: all },
    performance: { strokes },
    noiseDb,
    coarse: null,
  } as unknown as HeardRecording;
};

describe('how clearly softer sounds stand out', () => {
  it('are read of all from the first stroke to the last, but for clicks', () => {
    const talk = { time: -3, levelDb: -40, evidence: 1, sound: 'voice' } as const;
    const click = { time: 1.05, levelDb: -40, evidence: 1, sound: 'click' } as const;
    expect(faintSounds([talk, ...sounds(40, 4), click])).toEqual({
      evidence: 40,
      levelDb: -36,
      leftOut: 7 / (3 * bars - 1),
    });
  });

  it('are not told of a few sounds', () => {
    expect(faintSounds(sounds(40).slice(0, 7))).toBeNull();
  });
});

describe('taps near the noise', () => {
  it('are clear where they stand far above it, however faint a ringing drum makes them', () => {
    expect(tapToNoise(heard(200, -58))).toBeNull();
    expect(tapToNoise(heard(20, -75))).toBeNull();
  });

  it('are told, and spoil nothing, where noise outside their band makes them faint', () => {
    const finding = tapToNoise(heard(40, -58));
    expect(finding).toEqual({ code: 'taps-near-noise', facts: { overDb: 22 }, spoils: [] });
  });

  it('spoil counts where many lie at the edge of what is found, levels where some were left out, all where many were', () => {
    const spoils = (evidence: number, other?: number) => tapToNoise(heard(evidence, -58, other))!.spoils;
    expect(spoils(14)).toContain('missed');
    expect(spoils(14)).not.toContain('accent-to-tap-ratio');
    expect(spoils(40, 5)).toContain('accent-to-tap-ratio');
    expect(spoils(40, 5)).not.toContain('timing-spread');
    expect(spoils(40, 2)).toContain('timing-spread');
  });

  it('are said in takes of which noise leaves little but accents', () => {
    const { sheet, spec } = checkTakeSpec(reportTakes.find(({ name }) => name.startsWith('soft pad'))!, 71);
    const { samples, sampleRate } = renderTake(spec);
    const noisy = Float64Array.from(samples);
    addNoise(noisy, 'white', -48, sampleRate, seeded('hiss'));
    const grade = (some: Float32Array) => gradeTake(memorySource(some, sampleRate), sheet);
    const result = grade(Float32Array.from(noisy));
    const taps = result.strokes.role.filter((role) => role === 'matched').length;
    expect(taps).toBeLessThan(0.8 * result.slots.state.length);
    const { outcome } = result.measures.find(({ id }) => id === 'tempo-error')!;
    expect(outcome).toMatchObject({ state: 'not-measurable', reason: { code: 'spoiled-taps-near-noise' } });
    expect(grade(samples).recording.check!.map(({ code }) => code)).not.toContain('taps-near-noise');
  });
});
