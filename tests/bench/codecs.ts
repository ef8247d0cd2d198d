/**
 * One take in every kind of file, as ffmpeg writes it: where its sound lies against ffmpeg's decoding, and its grade against
 * that of the wave file. `tsx tests/bench/codecs.ts` writes reports/codecs.md.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseSheet } from '../../src/core/exercise/parse-sheet.ts';
import { gradeTake } from '../../src/core/grade-take.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { median } from '../../src/core/stats/median.ts';
import { sampleSheetPath } from '../cli/built-program.ts';
import { codedForms } from '../formats/coded/coded-forms.ts';
import {
  compared,
  decodedByFfmpeg,
  encoded,
  openedFile,
  shortTake,
  takeName,
} from '../formats/coded/coded-take.ts';
import { programPath } from '../programs.ts';
import { compareResults, movedBy } from './compare-results.ts';
import { figure, markdownTable } from './markdown-table.ts';

const ffmpeg = programPath('ffmpeg');
if (ffmpeg === undefined) throw new Error('ffmpeg is needed to code the take.');
const parsed = parseSheet(readFileSync(sampleSheetPath(takeName), 'utf8'));
if (!parsed.ok) throw new Error('The sheet of the take cannot be read.');
const { sheet } = parsed;

async function graded(path: string): Promise<{ result: TakeResult; samples: Float32Array; rate: number }> {
  const recording = await openedFile(path);
  const { source } = recording;
  const result = gradeTake(source, sheet, { name: 'take' });
  const samples = source.read(0, 0, source.length);
  recording.close();
  return { result, samples, rate: source.sampleRate };
}

/** Differences of the strokes of two results, in the order of time: the middle one, and the largest from it. */
function apart(
  a: readonly number[],
  b: readonly number[],
): { readonly middle: number; readonly most: number } {
  if (a.length !== b.length) return { middle: Number.NaN, most: Number.NaN };
  const differences = a.map((value, i) => value - b[i]!);
  const middle = median(differences);
  return { middle, most: Math.max(...differences.map((one) => Math.abs(one - middle))) };
}

const folder = mkdtempSync(join(tmpdir(), 'evenhand-'));
// At the rate of the others, so that nothing but the coding differs.
const plain = { file: 'w.wav', options: ['-c:a', 'pcm_s24le'] };
const wave = await graded(encoded(ffmpeg, folder, plain, shortTake));
const rows: string[][] = [];
for (const form of codedForms) {
  const path = encoded(ffmpeg, folder, form, shortTake);
  const { result, samples, rate } = await graded(path);
  const { later, largest } = compared(samples, decodedByFfmpeg(ffmpeg, path, 0, form.decoder));
  const { figures, refused, lost, gained, points } = compareResults(wave.result, result);
  const whole = figures.filter(({ scope }) => Object.keys(scope).length === 0);
  const inside = whole.filter((pair) => Math.abs(movedBy(pair)) <= 1).length;
  const times = apart(result.strokes.time, wave.result.strokes.time);
  const levels = apart(result.strokes.levelDb, wave.result.strokes.levelDb);
  rows.push([
    `${form.name} (${form.file.replace(/^.*\./, '')})`,
    String(rate),
    String(later),
    largest < 1e-9 ? '0' : largest.toExponential(0).replace('-', '−'),
    figure(1000 * times.middle, 2),
    figure(1000 * times.most, 2),
    figure(levels.most, 2),
    `${inside} of ${whole.length}`,
    String(refused.filter((name) => name.includes('{}')).length),
    `${lost}, ${gained}`,
    figure(Math.max(...Object.values(points).map(Math.abs)), 1),
  ]);
  console.log(rows.at(-1)!.join(' | '));
}
rmSync(folder, { recursive: true });

const head = [
  'file',
  'Hz',
  'later than ffmpeg, samples',
  'largest difference of a sample',
  'strokes later, ms',
  'a stroke apart, ms (most)',
  'its level apart, dB (most)',
  'figures inside',
  'figures refused',
  'strokes lost, gained',
  'points of a score (most)',
];
const path = new URL('../../reports/codecs.md', import.meta.url);
// How much memory long files take is measured apart, and stays.
const longFiles = readFileSync(path, 'utf8').split(/^(?=## Long files)/m)[1] ?? '';
writeFileSync(
  path,
  `# The same take in every kind of file

\`npx tsx tests/bench/codecs.ts\`: the take \`${takeName}\` (${wave.result.strokes.time.length} strokes), written by ffmpeg as recorders, phones and
messengers do, read here.

*Later than ffmpeg*: by so many samples our sound lies later than what ffmpeg decodes from the same file, by the largest
product; the next column is the largest difference of a sample where both lie. Against the wave file: by how much
strokes come later in the middle, and how far the furthest is from that, in time and in level; figures of the whole take inside the wave file's interval of 95 %,
those that only the wave file gives, strokes on written places, and points by which a score differs (– where one has none).
Where a file doesn't state its encoder's delay (plain AAC, fragments of MP4, MP3 without its tag, Opus in CAF), all strokes lie later by
that; no figure depends on where a take begins in its file.

${markdownTable(head, rows)}

What a coding of a low rate does to levels is found by the check of the recording (\`reports/recording-check.md\`). AMR, in files of
its own or in 3GP, is told in a sentence: it is a coding for speech whose filters take away what strokes are made of.
${longFiles === '' ? '' : `\n${longFiles}`}`,
);
