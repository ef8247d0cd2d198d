/**
 * Ways to measure a stroke's level across recording chains. `tsx tests/bench/levels.ts [seeds]` writes
 * reports/levels.md.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { programPath } from '../programs.ts';
import { levelCandidates } from './level-candidates.ts';
import { levelErrors } from './level-errors.ts';
import { levelsReport } from './levels-report.ts';
import { recordingChains } from './recording-chains.ts';

/** As many takes as medians in a hall need: a tap under an accent's tail scatters by 4 dB there. */
const defaultSeeds = Array.from({ length: 30 }, (_, i) => 2301 + i);
const seeds = process.argv[2]?.split(',').map(Number) ?? defaultSeeds;
const ffmpeg = programPath('ffmpeg');
if (ffmpeg === undefined) console.warn('Codecs were left out: ffmpeg is not installed.');
const chains = recordingChains.filter((chain) => chain.codec === undefined || ffmpeg !== undefined);
const errors = chains.map((chain) => levelErrors(chain, seeds, levelCandidates, ffmpeg));
mkdirSync('reports', { recursive: true });
writeFileSync('reports/levels.md', levelsReport(chains, errors, levelCandidates, seeds));
