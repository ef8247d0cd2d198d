/**
 * Time and memory of the whole program, from its start to its end, on files of one and of ten minutes.
 * `tsx tests/bench/speed.ts [runs]` writes reports/speed.md; build the program first.
 */
import { spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { encodeWav } from '../../fixtures/generator/wav-file.ts';
import { aubioHop, aubioPath } from './aubio.ts';
import { sectionOf, withSection } from './report-section.ts';
import { runTimed, type Timing } from './run-timed.ts';
import { type SpeedRow, speedReport } from './speed-report.ts';
import { speedKinds, speedTake } from './speed-takes.ts';
import { type CpuProfile, type TimeShares, timeShares } from './time-shares.ts';

const load = () => (loadavg()[0] ?? Number.NaN).toFixed(1);
const loadBefore = load();
const runs = Number(process.argv[2] ?? 5);
const lengths = [60, 602];
const program = resolve('dist/main.js');
if (!existsSync(program)) throw new Error('The program is not built: npm run build.');
const aubio = aubioPath();
if (aubio === undefined) console.warn('aubio was left out: its program aubioonset is not installed.');

/** Functions that stand for the jobs of grading; what runs before them is the program's start. */
const jobs = {
  'opening the file': ['openPlayed'],
  'finding strokes': ['hearStrokes'],
  'drawing the wave': ['envelope'],
  'laying strokes on slots': ['risingAlignment', 'countedAlignment'],
  'telling hands by sound': ['handsBySound'],
  'checking the recording': ['checkRecording'],
  measuring: ['measureTake'],
  'scoring and advice': ['scoreTake', 'advise', 'cannotTell'],
  'telling the result': ['writeOutputs', 'textSummary'],
};
const start = 'start of the program, collecting memory and the rest';

/** Where the time of one run goes, as its profile tells. */
function sharesOf(args: readonly string[]): TimeShares {
  const profiles = mkdtempSync(join(tmpdir(), 'profile-'));
  try {
    const profiled = ['--cpu-prof', `--cpu-prof-dir=${profiles}`, '--cpu-prof-interval=100', ...args];
    const { status, stderr } = spawnSync(process.execPath, profiled, { encoding: 'utf8' });
    if (status !== 0) throw new Error(`${args.join(' ')} failed: ${stderr}`);
    const [file = ''] = readdirSync(profiles);
    return timeShares(JSON.parse(readFileSync(join(profiles, file), 'utf8')) as CpuProfile, jobs, start);
  } finally {
    rmSync(profiles, { recursive: true });
  }
}

const triedHeading = 'What was tried';
const shares = new Map<string, TimeShares>();
const folder = mkdtempSync(join(tmpdir(), 'speed-'));
const rows: SpeedRow[] = [];
try {
  for (const seconds of lengths) {
    for (const kind of speedKinds) {
      const { samples, sampleRate, sheetText } = speedTake(kind, seconds);
      const wav = join(folder, 'take.wav');
      const sheet = join(folder, 'take.sheet');
      writeFileSync(wav, encodeWav(samples, sampleRate));
      writeFileSync(sheet, sheetText);
      const add = (job: string, timing: Timing) => rows.push({ job, kind, seconds, ...timing });
      add('strokes', runTimed(process.execPath, [program, 'strokes', wav], runs));
      const grade = [program, 'grade', wav, '--sheet', sheet];
      add('grade', runTimed(process.execPath, grade, runs));
      shares.set(`${kind}, ${seconds} s`, sharesOf(grade));
      if (aubio) {
        for (const hop of [aubioHop, 256]) {
          add(`aubioonset, hop ${hop}`, runTimed(aubio, ['-i', wav, '-H', String(hop)], runs));
        }
      }
      console.warn(`${kind}, ${seconds} s`);
    }
  }
} finally {
  rmSync(folder, { recursive: true });
}
mkdirSync('reports', { recursive: true });
const machine = `${cpus().length} × ${cpus()[0]?.model.trim() ?? 'unknown processor'}, Node ${process.versions.node}, load ${loadBefore} before and ${load()} after`;
const report = 'reports/speed.md';
const text = speedReport(rows, runs, machine, shares);
// What was tried stays: it isn't measured anew.
const tried = existsSync(report) ? sectionOf(readFileSync(report, 'utf8'), triedHeading) : null;
writeFileSync(report, tried === null ? text : withSection(text, triedHeading, tried));
