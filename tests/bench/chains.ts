/**
 * Grades of the same playing through several recording chains. `tsx tests/bench/chains.ts [seeds]` writes
 * reports/chains.md.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { programPath } from '../programs.ts';
import { chainsReport } from './chains-report.ts';
import { compareResults } from './compare-results.ts';
import { gradedThrough, gradingChains } from './grading-chains.ts';

const seeds = (process.argv[2] ?? '1,2,3,4,5,6,7,8').split(',').map(Number);
const ffmpeg = programPath('ffmpeg');
if (ffmpeg === undefined) console.warn('Codecs were left out: ffmpeg is not installed.');
const [first, ...others] = gradingChains;
const clean = seeds.map((seed) => gradedThrough(first!, seed, ffmpeg)!);
const rows = others.map((chain) => {
  const results = seeds.map((seed) => gradedThrough(chain, seed, ffmpeg));
  const comparisons = results.flatMap((result, i) => (result ? [compareResults(clean[i]!, result)] : []));
  return { name: chain.name, comparisons: comparisons.length > 0 ? comparisons : null };
});
mkdirSync('reports', { recursive: true });
writeFileSync('reports/chains.md', chainsReport(rows, seeds));
