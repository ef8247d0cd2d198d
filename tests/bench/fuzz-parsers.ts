import { writeFileSync } from 'node:fs';
import { mutations } from '../fuzz/mutate.ts';
import { parsers } from '../fuzz/parsers.ts';
import { markdownTable } from './markdown-table.ts';

/** Damaged files for every parser but those of sound: `tsx tests/bench/fuzz-parsers.ts [COUNT [SEED]]`. */
const [count = 10_000, seed = 1] = process.argv.slice(2).map(Number);
const rows: string[][] = [];
const faults = new Map<string, number>();
for (const { name, corpus, words, read } of parsers) {
  const files = await corpus();
  const pieces = words.map((word) => Buffer.from(word));
  let [used, slowest, crashes] = [0, 0, 0];
  for (const bytes of mutations(files, { seed, count, words: pieces })) {
    const start = performance.now();
    try {
      if (await read(bytes)) used += 1;
    } catch (error) {
      crashes += 1;
      const what = `${name}: ${error instanceof Error ? error.stack?.split('\n').slice(0, 2).join(' ') : error}`;
      faults.set(what, (faults.get(what) ?? 0) + 1);
    }
    slowest = Math.max(slowest, performance.now() - start);
  }
  const columns = [
    files.length,
    count,
    used,
    crashes,
    Math.round(slowest),
    Math.round(process.memoryUsage.rss() / 2 ** 20),
  ];
  rows.push([name, ...columns.map(String)]);
}
const head = ['parser', 'good files', 'damaged', 'still usable', 'crashes', 'slowest, ms', 'process, MiB'];
const text = `# Damaged files

\`npx tsx tests/bench/fuzz-parsers.ts ${count} ${seed}\`: one to three random changes of bits, bytes, pieces and lengths in a
good file. A crash is anything thrown but the parser's own fault. The sheets that were still usable were also laid out,
written and read again.

${markdownTable(head, rows)}
`;
writeFileSync(new URL('../../reports/fuzz-parsers.md', import.meta.url), text);
console.log(text, ...faults);
