/**
 * Time and memory of the whole program on recordings of ten minutes to two hours.
 * `tsx tests/bench/length.ts [minutes …]`, tens of minutes, writes reports/length.md; build the program first.
 */
import { spawnSync } from 'node:child_process';
import { closeSync, existsSync, mkdtempSync, openSync, rmSync, writeFileSync, writeSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { encodeWav } from '../../fixtures/generator/wav-file.ts';
import { wavHead } from '../../src/formats/wav-head.ts';
import { programPath } from '../programs.ts';
import { figure, markdownTable } from './markdown-table.ts';
import { runTimed } from './run-timed.ts';
import { speedTake } from './speed-takes.ts';

const asked = process.argv.slice(2).map(Number);
const lengths = asked.length === 0 ? [10, 30, 60, 120] : asked;
const part = { minutes: 10, headBytes: 44 };
const most = { times: 999, memory: 300 };
const program = resolve('dist/main.js');
const ffmpeg = programPath('ffmpeg');
if (!ffmpeg) console.warn('AAC was left out: ffmpeg is not installed.');
if (!existsSync(program)) throw new Error('The program is not built: npm run build.');
const load = () => (loadavg()[0] ?? Number.NaN).toFixed(1);
const loadBefore = load();

const { samples, sampleRate, sheetText } = speedTake('pad', 60 * part.minutes);
const sound = encodeWav(samples, sampleRate).subarray(part.headBytes);
const [settings = '', line = ''] = sheetText.split('\n');
const lineTimes = Number(/times: (\d+)/.exec(line)?.[1]);
const folder = mkdtempSync(join(tmpdir(), 'length-'));
const rows: string[][] = [];
try {
  for (const minutes of lengths) {
    const parts = minutes / part.minutes;
    if (!Number.isInteger(parts)) throw new Error(`${minutes} minutes: choose tens of minutes.`);
    const wav = join(folder, 'take.wav');
    const file = openSync(wav, 'w');
    writeSync(file, wavHead({ channels: 1, frames: parts * samples.length, sampleRate, depth: 'int16' }));
    for (let i = 0; i < parts; i++) writeSync(file, sound);
    closeSync(file);
    const sheet = join(folder, 'take.sheet');
    const linesNeeded = Math.ceil((parts * lineTimes) / most.times);
    const oneLine = line.replace(/times: \d+/, `times: ${Math.floor((parts * lineTimes) / linesNeeded)}`);
    writeFileSync(sheet, `${[settings, ...Array<string>(linesNeeded).fill(oneLine)].join('\n')}\n`);
    const m4a = join(folder, 'take.m4a');
    if (ffmpeg)
      spawnSync(ffmpeg, ['-y', '-loglevel', 'error', '-i', wav, '-c:a', 'aac', '-b:a', '128k', m4a]);
    for (const [job, args] of Object.entries({
      strokes: ['strokes', wav],
      grade: ['grade', wav, '--sheet', sheet],
      ...(ffmpeg ? { 'grade, AAC': ['grade', m4a, '--sheet', sheet] } : {}),
    })) {
      const { wallSeconds, userSeconds, mostMegabytes } = runTimed(
        process.execPath,
        [program, ...args],
        1,
        0,
      );
      const seconds = [wallSeconds, userSeconds, userSeconds / minutes].map((value) => figure(value, 2));
      rows.push([job, String(minutes), ...seconds, figure(mostMegabytes, 0)]);
      console.warn(rows.at(-1)!.join(' | '));
    }
  }
} finally {
  rmSync(folder, { recursive: true });
}
writeFileSync(
  'reports/length.md',
  `# Length

**Times depend on the machine and on what else it does: ${cpus().length} × ${cpus()[0]?.model.trim() ?? 'unknown processor'}, Node ${process.versions.node},
load ${loadBefore} before and ${load()} after.** What should stay the same from row to row of a job is the processor
time for each minute of the recording, and what may not pass ${most.memory} MiB is the memory.

The whole process, from its start to its end, on a rendered take of ten minutes (pad, triplets at 120 BPM, 48 kHz, 16 bits, one
channel) that is repeated to the length; AAC: the same at 128 kbit/s. "Memory": the most that was resident, MiB.

Made, after \`npm run build\`, by \`npx tsx tests/bench/length.ts\`.

${markdownTable(['job', 'length, min', 'wall, s', 'processor, s', 'processor for a minute, s', 'memory, MiB'], rows)}
`,
);
