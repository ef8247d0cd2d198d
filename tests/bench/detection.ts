/**
 * Stroke finding on every scenario and on real strokes, beside general-purpose onset finders on the same files.
 * `tsx tests/bench/detection.ts [seeds such as 5001,5002] [part of a name]` writes reports/detection.md.
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { encodeWav } from '../../fixtures/generator/wav-file.ts';
import { programPath } from '../programs.ts';
import { aubioPath } from './aubio.ts';
import { missingReal, takesOf } from './bench-takes.ts';
import { detectionReport } from './detection-report.ts';
import { loadEssentia } from './essentia.ts';
import { type HeardTake, hearTake } from './hear-take.ts';
import {
  aubioName,
  bestFinder,
  plainSettings,
  type StoredTake,
  scoreOthers,
  sweptSettings,
} from './other-finders.ts';

const seeds = (process.argv[2] ?? '5001,5002,5003,5004').split(',').map(Number);
const only = process.argv[3] ?? '';
/** The programs of others hear the takes of the first seed; they take far longer. */
const comparedSeeds = seeds.slice(0, 1);
const ffmpeg = programPath('ffmpeg');
const finders = { aubio: aubioPath(), ffmpeg, essentia: loadEssentia() };
const notices = [
  ...missingReal(ffmpeg),
  ...(finders.aubio ? [] : ['aubio was left out: its program aubioonset is not installed.']),
  ...(finders.essentia && ffmpeg ? [] : ['essentia was left out: essentia.js or ffmpeg is not installed.']),
];
for (const notice of notices) console.warn(notice);

const folder = mkdtempSync(join(tmpdir(), 'takes-'));
const heard: HeardTake[] = [];
const compared: HeardTake[] = [];
const stored: (StoredTake & { readonly seed: number })[] = [];
try {
  for (const seed of seeds) {
    for (const { samples, ...take } of takesOf(seed, ffmpeg, only)) {
      const one = hearTake({ ...take, samples });
      heard.push(one);
      if (!comparedSeeds.includes(seed)) continue;
      compared.push(one);
      const wavPath = join(folder, `${stored.length}.wav`);
      writeFileSync(wavPath, encodeWav(samples, take.sampleRate));
      stored.push({ take, wavPath, seed });
    }
    console.warn(`seed ${seed} heard`);
  }
  const others = new Map(await scoreOthers(stored, finders, plainSettings, true));
  if (finders.aubio) {
    // The threshold is chosen on the first seed, in favour of the program that is compared with.
    const first = stored.filter(({ seed }) => seed === seeds[0]);
    const tried = new Map(await scoreOthers(first, finders, sweptSettings, false));
    for (const setting of plainSettings) {
      const name = aubioName(setting);
      tried.set(name, (others.get(name) ?? []).slice(0, first.length));
    }
    const best = sweptSettings.filter((setting) => aubioName(setting) === bestFinder(tried));
    for (const [name, scores] of await scoreOthers(stored, finders, best, false)) others.set(name, scores);
  }
  const text = detectionReport({ heard, compared, others, seeds, comparedSeeds, notices });
  mkdirSync('reports', { recursive: true });
  if (only === '') writeFileSync('reports/detection.md', text);
  else console.log(text);
} finally {
  rmSync(folder, { recursive: true });
}
