import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { codedCorpus, secondsRead } from '../fuzz/coded-recordings.ts';
import { hostileRecordings } from '../fuzz/hostile-recordings.ts';
import { mutations } from '../fuzz/mutate.ts';
import { programPath } from '../programs.ts';
import { markdownTable } from './markdown-table.ts';
import { writeSection } from './report-section.ts';

/**
 * Damaged and hostile recordings of every kind that is decoded: `tsx tests/bench/fuzz-coded.ts [COUNT [SEED]]` writes its
 * section of reports/fuzz.md. Each kind gets a process of its own, so that the memory is its own and one that hangs is
 * noticed. Ends with 1 where one crashes, hangs or goes over the limits.
 */
const limits = { seconds: 5, mebibytes: 600, soundSeconds: 60 };
/** ms for all of one process; a thousand files take a tenth of it. */
const hangs = 600_000;
const [count = '1000', seed = '1', onePath] = process.argv.slice(2);

interface Outcome {
  readonly decoded: number;
  readonly refused: number;
  readonly crashes: readonly string[];
  /** Processor time of the slowest file, s. */
  readonly slowest: number;
  /** Most sound that one gave, s. */
  readonly longest: number;
  /** What the process took at most, MiB. */
  readonly most: number;
}

/** Works through damaged copies of a file, or through it alone where `COUNT` is 0. */
async function worked(path: string): Promise<Outcome> {
  const good = Uint8Array.from(readFileSync(path));
  const files = count === '0' ? [good] : mutations([good], { seed: Number(seed), count: Number(count) });
  const crashes: string[] = [];
  let [decoded, refused, slowest, longest, index] = [0, 0, 0, 0, 0];
  for (const bytes of files) {
    const from = process.cpuUsage();
    try {
      const seconds = await secondsRead(bytes);
      longest = Math.max(longest, seconds);
      if (seconds > 0) decoded += 1;
      else refused += 1;
    } catch (error) {
      crashes.push(
        `file ${index}: ${error instanceof Error ? error.stack?.split('\n').slice(0, 2).join(' ') : error}`,
      );
    }
    index += 1;
    const { user, system } = process.cpuUsage(from);
    slowest = Math.max(slowest, (user + system) / 1e6);
  }
  return { decoded, refused, crashes, slowest, longest, most: process.resourceUsage().maxRSS / 1024 };
}

function apart(name: string, bytes: Uint8Array, times: string): Outcome {
  const folder = mkdtempSync(join(tmpdir(), 'evenhand-'));
  const path = join(folder, 'file');
  writeFileSync(path, bytes);
  const { stdout, stderr, status } = spawnSync(
    process.execPath,
    ['--import', 'tsx', import.meta.filename, times, seed, path],
    { encoding: 'utf8', timeout: hangs, maxBuffer: 2 ** 26 },
  );
  rmSync(folder, { recursive: true });
  const outcome: Outcome =
    status === 0
      ? (JSON.parse(stdout) as Outcome)
      : {
          decoded: 0,
          refused: 0,
          crashes: [`the process ended with ${status}: ${stderr.slice(-400)}`],
          slowest: Number.NaN,
          longest: Number.NaN,
          most: Number.NaN,
        };
  const within = outcome.slowest <= limits.seconds && outcome.most <= limits.mebibytes;
  if (!within || outcome.crashes.length > 0 || !(outcome.longest <= limits.soundSeconds))
    process.exitCode = 1;
  console.warn(name, outcome);
  return outcome;
}

const figures = ({ crashes, longest, slowest, most }: Outcome) => [
  String(crashes.length),
  longest.toFixed(1),
  String(Math.round(1000 * slowest)),
  String(Math.round(most)),
];

if (onePath !== undefined) console.log(JSON.stringify(await worked(onePath)));
else {
  const ffmpeg = programPath('ffmpeg');
  if (ffmpeg === undefined) throw new Error('ffmpeg is not installed (Debian: ffmpeg).');
  const damaged = (await codedCorpus(ffmpeg)).map(({ name, bytes }) => {
    const outcome = apart(name, bytes, count);
    return [name, count, String(outcome.decoded), String(outcome.refused), ...figures(outcome)];
  });
  const hostile = hostileRecordings.map(({ name, bytes }) => {
    const outcome = apart(name, bytes(), '0');
    const became = outcome.crashes.length > 0 ? 'crash' : outcome.decoded > 0 ? 'decoded' : 'refused';
    return [name, became, ...figures(outcome).slice(1)];
  });
  const body = `\`npx tsx tests/bench/fuzz-coded.ts ${count} ${seed}\`: half a second of a take in each kind of file, with one to three random
changes of bits, bytes, pieces and lengths. *decoded*: there was sound, all of it numbers, what was lost silent; *refused*: two
sentences say why there was none. A crash is anything thrown, or a process that doesn't end. Limits for one file:
${limits.seconds} s of processor and ${limits.mebibytes} MiB for the whole process, of which some 150 are Node and the decoders.

${markdownTable(['file', 'damaged', 'decoded', 'refused', 'crashes', 'most sound, s', 'slowest, ms of processor', 'process, MiB'], damaged)}

Files made to harm, each in a process of its own:

${markdownTable(['file', 'what became of it', 'sound, s', 'ms of processor', 'process, MiB'], hostile)}`;
  writeSection('fuzz.md', 'Damaged and hostile files', 'Coded recordings', body);
}
