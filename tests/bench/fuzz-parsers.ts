import { execFileSync } from 'node:child_process';
import { hostileFiles } from '../fuzz/hostile-files.ts';
import { mutations } from '../fuzz/mutate.ts';
import { parsers } from '../fuzz/parsers.ts';
import { markdownTable } from './markdown-table.ts';
import { writeSection } from './report-section.ts';

/**
 * Damaged and hostile files for every parser but those of sound: `tsx tests/bench/fuzz-parsers.ts [COUNT [SEED]]` writes
 * its section of reports/fuzz.md. Each parser's damaged files and each hostile file get a process of their own, so that
 * the memory is theirs. Ends with 1 where one crashes or goes over the limits.
 */
const limits = { seconds: 2, mebibytes: 512 };
const [count = '10000', seed = '1', parserName, hostileName] = process.argv.slice(2);

interface Outcome {
  readonly good: number;
  readonly usable: number;
  readonly crashes: readonly string[];
  /** Processor time of the slowest file, s. */
  readonly slowest: number;
  /** What the process took at most, MiB. */
  readonly most: number;
}

type Named = readonly [name: string, bytes: Uint8Array];

async function* filesOf(name: string, good: readonly Uint8Array[]): AsyncGenerator<Named> {
  if (hostileName !== undefined) {
    const file = hostileFiles.find((each) => each.parser === name && each.name === hostileName)!;
    yield [file.name, await file.bytes()];
    return;
  }
  const words = parsers.find((each) => each.name === name)!.words.map((word) => Buffer.from(word));
  let index = 0;
  for (const bytes of mutations(good, { seed: Number(seed), count: Number(count), words }))
    yield [`damaged file ${index++}`, bytes];
}

async function worked(name: string): Promise<Outcome> {
  const { corpus, read } = parsers.find((each) => each.name === name)!;
  const good = hostileName === undefined ? await corpus() : [];
  const crashes: string[] = [];
  let [usable, slowest] = [0, 0];
  for await (const [file, bytes] of filesOf(name, good)) {
    const from = process.cpuUsage();
    try {
      if (await read(bytes)) usable += 1;
    } catch (error) {
      crashes.push(
        `${file}: ${error instanceof Error ? error.stack?.split('\n').slice(0, 2).join(' ') : error}`,
      );
    }
    const { user, system } = process.cpuUsage(from);
    slowest = Math.max(slowest, (user + system) / 1e6);
  }
  return { good: good.length, usable, crashes, slowest, most: process.resourceUsage().maxRSS / 1024 };
}

function apart(name: string, hostile: readonly string[] = []): Outcome {
  const text = execFileSync(
    process.execPath,
    ['--import', 'tsx', import.meta.filename, count, seed, name, ...hostile],
    { encoding: 'utf8', maxBuffer: 2 ** 26, stdio: ['ignore', 'pipe', 'inherit'] },
  );
  const outcome = JSON.parse(text) as Outcome;
  const over = outcome.slowest > limits.seconds || outcome.most > limits.mebibytes;
  if (over || outcome.crashes.length > 0) process.exitCode = 1;
  console.warn(name, ...hostile, outcome);
  return outcome;
}

const ms = ({ slowest }: Outcome) => String(Math.round(slowest * 1000));
const mebibytes = ({ most }: Outcome) => String(Math.round(most));

if (parserName !== undefined) console.log(JSON.stringify(await worked(parserName)));
else {
  const damaged = parsers.map(({ name }) => {
    const outcome = apart(name);
    const { good, usable, crashes } = outcome;
    const counts = [good, Number(count), usable, crashes.length].map(String);
    return [name, ...counts, ms(outcome), mebibytes(outcome)];
  });
  const hostile = hostileFiles.map(({ parser, name }) => {
    const outcome = apart(parser, [name]);
    const became = outcome.crashes.length > 0 ? 'crash' : outcome.usable > 0 ? 'read' : 'refused';
    return [`${parser}: ${name}`, became, ms(outcome), mebibytes(outcome)];
  });
  const body = `\`npx tsx tests/bench/fuzz-parsers.ts ${count} ${seed}\`: one to three random changes of bits, bytes, pieces and lengths in a
good file. A crash is anything thrown but the parser's own fault. Sheets that were still usable were also laid out,
written and read again; archives were taken into a library. What is taken in of take files and archives is held against
what was written: damage in it that nobody notices counts as a crash. Limits for one file: ${limits.seconds} s of processor and ${limits.mebibytes} MiB for the
whole process, of which some 140 are Node and the program before it reads anything.

${markdownTable(['parser', 'good files', 'damaged', 'still usable', 'crashes', 'slowest, ms of processor', 'process, MiB'], damaged)}

Files made to harm, each in a process of its own; what it takes to make the file is in its memory. The same stand in
\`tests/fuzz\`, which every run of the tests goes through.

${markdownTable(['file', 'what became of it', 'ms of processor', 'process, MiB'], hostile)}`;
  writeSection('fuzz.md', 'Damaged and hostile files', 'Texts, scores, notes, take files, archives', body);
}
