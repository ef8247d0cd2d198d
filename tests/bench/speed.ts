/**
 * Time and memory of the whole program, from its start to its end, on files of one and of ten minutes.
 * `tsx tests/bench/speed.ts [runs]` writes reports/speed.md; build the program first.
 */
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { encodeWav } from '../../fixtures/generator/wav-file.ts';
import { aubioHop, aubioPath } from './aubio.ts';
import { runTimed, type Timing } from './run-timed.ts';
import { type SpeedRow, speedReport } from './speed-report.ts';
import { speedKinds, speedTake } from './speed-takes.ts';

const load = () => (loadavg()[0] ?? Number.NaN).toFixed(1);
const loadBefore = load();
const runs = Number(process.argv[2] ?? 5);
const lengths = [60, 602];
const program = resolve('dist/main.js');
if (!existsSync(program)) throw new Error('The program is not built: npm run build.');
const aubio = aubioPath();
if (aubio === undefined) console.warn('aubio was left out: its program aubioonset is not installed.');

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
      add('grade', runTimed(process.execPath, [program, 'grade', wav, '--sheet', sheet], runs));
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
writeFileSync('reports/speed.md', speedReport(rows, runs, machine));
