import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { decodeWav } from '../../../fixtures/generator/wav-file.ts';
import { hearStrokes } from '../../../src/core/onsets/hear-strokes.ts';
import { median } from '../../../src/core/stats/median.ts';
import { describeOutside } from '../../outside.ts';
import { describeProgram } from '../../programs.ts';
import { floatSource } from '../../support/float-source.ts';
import { whiteNoise } from '../../support/signals.ts';

const rate = 44_100;

/** Recorded strokes one after the other in quiet noise, each begun at its time (s). */
function inARow(strokes: readonly Float32Array[], apart: number) {
  const times = strokes.map((_, i) => 0.5 + apart * i);
  const samples = whiteNoise(Math.ceil((times.at(-1)! + apart + 0.5) * rate), 10 ** (-85 / 20), 1);
  strokes.forEach((stroke, i) => {
    const from = Math.round(times[i]! * rate);
    stroke.forEach((value, n) => {
      if (from + n < samples.length) samples[from + n]! += value;
    });
  });
  return { times, hearing: hearStrokes(floatSource(rate, samples)) };
}

describe('recorded drums', () => {
  const names = ['snare', 'high-tom', 'middle-tom', 'low-tom'];
  const read = (name: string, layer: string) =>
    decodeWav(readFileSync(new URL(`../../../fixtures/recorded/${name}-${layer}.wav`, import.meta.url)))
      .samples;

  it.each(names)('the %s is found wherever it is struck', (name) => {
    const strokes = Array.from({ length: 8 }, (_, i) => read(name, i % 2 === 0 ? 'hard' : 'soft'));
    const { times, hearing } = inARow(strokes, 0.7);
    for (const time of times) {
      // The files begin where the sound reaches a fiftieth of its peak: their zero is arbitrary by some tenths of 1 ms.
      const near = hearing.sounds.filter((sound) => Math.abs(sound.time - time) < 0.002);
      expect(near, `at ${time} s`).toHaveLength(1);
    }
    // The same file struck again is heard at the same place and level.
    const heard = times.map((time) => hearing.sounds.find((sound) => Math.abs(sound.time - time) < 0.002)!);
    for (let i = 2; i < times.length; i++) {
      const later = heard[i]!.time - times[i]! - (heard[i - 2]!.time - times[i - 2]!);
      expect(Math.abs(later)).toBeLessThan(0.0001);
      expect(Math.abs(heard[i]!.levelDb - heard[i - 2]!.levelDb)).toBeLessThan(0.3);
    }
  });
});

const folder = 'strokes_body_percussion';
const layers = {
  'finger clap': { soft: 'fingerclap_vl1', loud: 'fingerclap_vl2', counts: [4, 6] },
  belly: { soft: 'bellycenter_l_vl1', loud: 'bellycenter_l_vl2', counts: [4, 4] },
} as const;
const filesOf = ({ soft, loud, counts }: (typeof layers)[keyof typeof layers]) =>
  [soft, loud].map((stem, layer) =>
    Array.from({ length: counts[layer]! }, (_, i) => `${folder}/${stem}_rr${i + 1}.flac`),
  );

describeOutside(
  'strokes with their natural levels, recorded by others',
  [`${folder}/measured.json`, ...Object.values(layers).flatMap((layer) => filesOf(layer).flat())],
  (outside) => {
    describeProgram('flac', 'heard and compared with levels measured elsewhere', (flac) => {
      const raw = ['-s', '-d', '-c', '--force-raw-format', '--endian=little', '--sign=signed'];
      const read = (file: string): Float32Array => {
        const bytes = execFileSync(flac, [...raw, join(outside, file)], { maxBuffer: 2 ** 26 });
        const { frames } = measured.files.find((one) => file.endsWith(one.file))!;
        // One channel of 24 bits.
        expect(bytes.length).toBe(3 * frames);
        return Float32Array.from({ length: frames }, (_, n) => bytes.readIntLE(3 * n, 3) / 2 ** 23);
      };
      const measured = JSON.parse(readFileSync(join(outside, folder, 'measured.json'), 'utf8')) as {
        files: { file: string; frames: number; rms50ms_dBFS: number; first_over_5pct: number }[];
      };

      it.each(Object.entries(layers))('%s', (_, layer) => {
        const [soft, loud] = filesOf(layer).map((files) => {
          const { times, hearing } = inARow(files.map(read), 0.6);
          return files.map((file, i) => {
            const known = measured.files.find((one) => file.endsWith(one.file))!;
            const due = times[i]! + known.first_over_5pct / rate;
            const near = hearing.sounds.filter((sound) => Math.abs(sound.time - due) < 0.006);
            expect(near.length, file).toBeGreaterThan(0);
            return { heard: near[0]!.levelDb, known: known.rms50ms_dBFS };
          });
        });
        const step = (value: (one: { heard: number; known: number }) => number) =>
          median(loud!.map(value)) - median(soft!.map(value));
        // Power of the first milliseconds above 150 Hz against that of fifty at all frequencies: near, not the same.
        expect(Math.abs(step(({ heard }) => heard) - step(({ known }) => known))).toBeLessThan(4);
      });
    });
  },
);
