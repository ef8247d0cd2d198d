import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { encodeWav } from '../../fixtures/generator/wav-file.ts';
import { describeProgram } from '../programs.ts';
import { readTimes } from './aubio.ts';
import { takesOf } from './bench-takes.ts';
import { aubioName, bestFinder, plainSettings, scoreOthers, sweptSettings } from './other-finders.ts';

it('reads one time a line', () => {
  expect(readTimes('0.117937\n1.5\n')).toEqual([{ time: 0.117937 }, { time: 1.5 }]);
  expect(readTimes('')).toEqual([]);
});

it('tries every method at every threshold once', () => {
  const names = [...plainSettings, ...sweptSettings].map(aubioName);
  expect(new Set(names).size).toBe(9 * 4);
});

describeProgram('aubioonset', 'another onset finder on the same take', (aubio) => {
  it('finds the strokes of a clean take', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'finder-'));
    try {
      const [take] = takesOf(1001, undefined, 'clean-120');
      const wavPath = join(folder, 'take.wav');
      writeFileSync(wavPath, encodeWav(take!.samples, take!.sampleRate));
      const settings = plainSettings.filter(({ method }) => method === 'hfc' || method === 'phase');
      const finders = { aubio, ffmpeg: undefined, essentia: undefined };
      const scores = await scoreOthers([{ take: take!, wavPath }], finders, settings, true);
      expect(bestFinder(scores)).toBe('aubio hfc');
      expect(scores.get('aubio hfc')![0]!.within10Ms).toBe(take!.truth.strokes.length);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
