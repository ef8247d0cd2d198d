import fc from 'fast-check';
import { expect, it } from 'vitest';
import { memoryBytes } from '../../src/formats/memory-bytes.ts';
import { riffLayout } from '../../src/formats/riff-layout.ts';
import { wavSource } from '../../src/formats/wav-source.ts';
import { writeWav } from '../../src/formats/write-wav.ts';
import { gradedWhole, hostileSounds, hostileTake, hostileTakes } from './hostile-takes.ts';
import { readAndGrade, wavCorpus, wavWords } from './hostile-wav.ts';
import { mutations } from './mutate.ts';

/** `tests/bench/fuzz.ts` does the same with thousands. */
const count = 25;

it.each(Object.keys(hostileSounds))('gives %s a whole result', (sound) => {
  const state = gradedWhole(hostileTake(sound, 'triplets', { frames: 24_000, sampleRate: 8000 }));
  if (sound === 'strokes as asked') expect(state).toBe('graded');
  if (['silence', 'a constant', 'nothing but no numbers', 'white noise'].includes(sound))
    expect(state).toBe('not-gradable');
});

it('gives any sound, rate, length and number of channels a whole result on any sheet, or refuses it', () => {
  const states = new Set<string>();
  for (const take of hostileTakes(9, count)) {
    try {
      states.add(gradedWhole(take));
    } catch (error) {
      throw new Error(take.name, { cause: error });
    }
  }
  expect([...states].sort()).toEqual(['graded', 'not-gradable', 'refused']);
});

it('grades a damaged wave file or says what is wrong with it', () => {
  const corpus = wavCorpus();
  for (const whole of corpus) expect(readAndGrade(whole)).toBe('graded');
  const words = wavWords.map((word) => Buffer.from(word, 'latin1'));
  for (const bytes of mutations(corpus, { seed: 5, count: 8, words })) readAndGrade(bytes);
  // Most of what decides stands in the header.
  const heads = corpus.map((file) => file.subarray(0, 400));
  const states = [...mutations(heads, { seed: 6, count: 120, words })].map(readAndGrade);
  expect(states).toContain('refused');
  expect(states).toContain('not-gradable');
});

it('reads the samples that were written, whatever they are', () => {
  const samples = fc.array(fc.float({ min: -1, max: Math.fround(0.9999), noNaN: true }), {
    minLength: 1,
    maxLength: 50,
  });
  const depths = fc.constantFrom('int16', 'int24', 'float32');
  const steps = { int16: 2 ** -15, int24: 2 ** -23, float32: 0 };
  fc.assert(
    fc.property(
      fc.array(samples, { minLength: 1, maxLength: 3 }),
      depths,
      fc.integer({ min: 8000, max: 192_000 }),
      (drawn, depth, sampleRate) => {
        const length = Math.min(...drawn.map((one) => one.length));
        const channels = drawn.map((one) => Float32Array.from(one.slice(0, length)));
        const bytes = memoryBytes(writeWav({ channels, sampleRate, depth }));
        const outcome = riffLayout(bytes);
        if (!outcome.ok) throw new Error(outcome.fault.code);
        expect(outcome.layout).toMatchObject({ sampleRate, channels: channels.length, frames: length });
        const source = wavSource(bytes, outcome.layout);
        channels.forEach((written, channel) => {
          const read = source.read(channel, 0, length);
          // Rounding to the nearest step, and to a float.
          for (const [i, sample] of written.entries())
            expect(Math.abs(read[i]! - sample)).toBeLessThanOrEqual(0.5000001 * steps[depth]);
        });
      },
    ),
    { numRuns: 200 },
  );
});
