/**
 * Hostile recordings for the whole of the analysis, and damaged wave files: `tsx tests/bench/fuzz.ts [TAKES [FILES [SEED]]]`
 * writes its section of reports/fuzz.md.
 */
import { gradedWhole, hostileSheets, hostileSounds, hostileTakes } from '../fuzz/hostile-takes.ts';
import { readAndGrade, wavCorpus, wavWords } from '../fuzz/hostile-wav.ts';
import { mutations } from '../fuzz/mutate.ts';
import { markdownTable } from './markdown-table.ts';
import { writeSection } from './report-section.ts';

const [takes = 1500, files = 10_000, seed = 1] = process.argv.slice(2).map(Number);
const crashes = new Map<string, number>();

/** Works through inputs and counts what came of them; the slowest by processor time, ms. */
function tried<T>(
  name: string,
  inputs: Iterable<T>,
  work: (input: T) => string,
  told: (input: T) => string,
): string[] {
  const states = new Map<string, number>();
  let slowest = { ms: 0, input: '' };
  let count = 0;
  for (const input of inputs) {
    count += 1;
    const from = process.cpuUsage();
    let state: string;
    try {
      state = work(input);
    } catch (error) {
      state = 'crash';
      const what = `${name}: ${told(input)}: ${error instanceof Error ? error.message : error}`;
      crashes.set(what, (crashes.get(what) ?? 0) + 1);
    }
    states.set(state, (states.get(state) ?? 0) + 1);
    const { user, system } = process.cpuUsage(from);
    const ms = (user + system) / 1000;
    if (ms > slowest.ms) slowest = { ms, input: told(input) };
  }
  console.warn(name, count, slowest);
  const of = (state: string) => String(states.get(state) ?? 0);
  const memory = String(Math.round(process.resourceUsage().maxRSS / 1024));
  return [
    name,
    ...[String(count), of('graded'), of('not-gradable'), of('refused'), of('crash')],
    ...[String(Math.round(slowest.ms)), memory],
  ];
}

const corpus = wavCorpus();
const words = wavWords.map((word) => Buffer.from(word, 'latin1'));
const heads = corpus.map((file) => file.subarray(0, 400));
const rows = [
  tried('hostile takes', hostileTakes(seed, takes), gradedWhole, ({ name }) => name),
  tried(
    'wave files, damaged in the header',
    mutations(heads, { seed, count: files, words }),
    readAndGrade,
    (file) => `${file.length} bytes`,
  ),
  tried(
    'wave files, damaged anywhere',
    mutations(corpus, { seed, count: files / 20, words }),
    readAndGrade,
    (file) => `${file.length} bytes`,
  ),
];
const head = [
  'corpus',
  'tried',
  'graded',
  'not gradable',
  'refused',
  'crashes',
  'slowest, ms of processor',
  'process, MiB',
];
const body = `\`npx tsx tests/bench/fuzz.ts ${takes} ${files} ${seed}\`. Each take is one of ${Object.keys(hostileSounds).length} sounds (${Object.keys(hostileSounds).join(', ')})
against one of ${Object.keys(hostileSheets).length} sheets (${Object.keys(hostileSheets).join(', ')}), at 1 to 384,000 Hz, with 1, 2 or 8
channels, of 1 to 200,000 samples. Refused are those below 8,000 Hz, in a sentence. Wave files: ${corpus.length} whole ones (three
depths, one and two channels) with one to three random changes of bits, bytes, pieces and lengths; refused are those whose
fault is told in two sentences. What is graded or not gradable has a result that fits the schema after it went through
JSON. A crash is anything else that is thrown.

${markdownTable(head, rows)}
${[...crashes].map(([what, count]) => `\n- ${count} × ${what}`).join('')}`;
writeSection('fuzz.md', 'Damaged and hostile files', 'Hostile recordings and wave files', body);
console.log(body);
