import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { readSheet } from '../../../fixtures/generator/read-sheet.ts';
import { recordedStrokes } from '../../../fixtures/generator/recorded-strokes.ts';
import { found, gradeSamples } from './grade-samples.ts';

const rate = 48_000;
const bpm = 90;
const { sheet, slots } = readSheet(`tempo: ${bpm}\n>RLR >LRL ; times: 8`);
const interval = 60 / bpm / 3;

/** Recorded strokes laid on silence, each cut after `seconds`, at full level or faded over its last `fade` s. */
function laid(
  name: 'snare' | 'high-tom',
  { seconds, fade = 0 }: { seconds: number; fade?: number },
): Float32Array {
  const random = seeded('laid');
  const make = recordedStrokes(name);
  const out = new Float32Array(Math.ceil((1 + slots.length * interval) * rate));
  for (const [i, { accent }] of slots.entries()) {
    const at = Math.round((0.5 + i * interval + random.normal(0, 0.005)) * rate);
    const levelDb = (accent ? -9 : -24) + random.normal(0, 1.2);
    const { samples } = make({
      sampleRate: rate,
      fraction: 0,
      levelDb,
      softDb: accent ? 0 : 15,
      tiltDb: 0,
      random,
    });
    const length = Math.min(samples.length, Math.round(seconds * rate));
    for (let k = 0; k < length; k++) {
      const left = (length - k) / (fade * rate);
      out[at + k]! += Math.min(1, left) * samples[k]!;
    }
  }
  return out.map((x) => Math.round(32768 * x) / 32768);
}

const codesOf = (samples: Float32Array) =>
  gradeSamples(samples, rate, sheet).recording.check!.map(({ code }) => code);

describe('silence between strokes', () => {
  it.each([
    ['snare', { seconds: 0.3 }],
    ['snare', { seconds: 0.12, fade: 0.01 }],
    ['snare', { seconds: 0.06 }],
    ['high-tom', { seconds: 0.08, fade: 0.003 }],
    ['high-tom', { seconds: 0.06 }],
  ] as const)('is no lost sound, however strokes end: %s, %o', (name, end) => {
    const codes = codesOf(laid(name, end));
    expect(codes).not.toContain('drop-outs');
    expect(codes.includes('gated')).toBe(end.seconds < 0.3);
  });

  it('hides no sound that is missing within a stroke that goes on as it was', () => {
    const samples = laid('high-tom', { seconds: 0.15, fade: 0.003 });
    const at = [9, 24, 39].map((i) => 0.5 + i * interval + 0.05);
    for (const time of at) samples.fill(0, Math.round(time * rate), Math.round((time + 0.02) * rate));
    const { facts } = found(gradeSamples(samples, rate, sheet), 'drop-outs')!;
    expect(facts).toMatchObject({ places: 3 });
    expect(facts.at).toBeCloseTo(at[0]!, 1);
  });

  it('does not let the same recorded sound, laid down again and again, pass for sound that comes twice', () => {
    const once = laid('snare', { seconds: 0.1 }).slice(Math.round(0.45 * rate), Math.round(0.62 * rate));
    const samples = new Float32Array(Math.ceil((1 + slots.length * 0.18) * rate));
    for (let i = 0; i < slots.length; i++) samples.set(once, Math.round((0.5 + i * 0.18) * rate));
    expect(codesOf(samples)).not.toContain('drop-outs');
  });
});
