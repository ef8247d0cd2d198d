import { writeFileSync } from 'node:fs';
import { alignTake } from '../../src/core/alignment/align-take.ts';
import { layOut } from '../../src/core/exercise/lay-out.ts';
import { hearStrokes } from '../../src/core/onsets/hear-strokes.ts';
import { memorySource } from './bench-take.ts';
import { reportTakes } from './check-takes.ts';
import { companyTake } from './company-takes.ts';
import { gradeBothWays, harmDone } from './harm-done.ts';
import { figure, markdownTable } from './markdown-table.ts';

/**
 * Takes with somebody else practising in the room, laid as one player's strokes and as they are graded:
 * `tsx tests/bench/company.ts [seeds with commas between them]` writes reports/company.md.
 */
const seeds = (process.argv[2] ?? '7101,7102').split(',').map(Number);
const levels = [10, 15, 20, 26, 32];
const tempos = [1, 0.9, 1.08];
const nearS = 0.005;

const rows = levels.map((underDb) => {
  const sum = { takes: 0, found: 0, wanted: 0, before: 0, after: 0, wrong: 0, told: 0, between: 0 };
  for (const seed of seeds) {
    for (const [i, take] of reportTakes.entries()) {
      // Its click would be laid on both.
      if (take.name.includes('click')) continue;
      const other = reportTakes[(i + 1 + (seed % 4)) % reportTakes.length]!;
      const mixed = companyTake(take, other, { seed, tempo: tempos[(i + seed) % 3]!, underDb });
      const source = memorySource(mixed.together, mixed.sampleRate);
      const strokes = hearStrokes(source).sounds.filter(({ sound }) => sound === 'pad');
      const timeOf = new Map(
        mixed.strokes.flatMap(({ slot, time }) => (slot === null ? [] : [[slot, time]])),
      );
      const right = (pairs: readonly (readonly [number, number])[]) =>
        pairs.filter(([slot, time]) => Math.abs((timeOf.get(slot) ?? Number.NaN) - time) < nearS).length;
      const { sheet } = mixed;
      const laid = alignTake({ slots: layOut(sheet), sheet, strokes, click: null });
      const alone = gradeBothWays(mixed.alone, mixed.sampleRate, sheet);
      const graded = gradeBothWays(mixed.together, mixed.sampleRate, sheet);
      const { role, slot, time } = graded.result.strokes;
      const matched = role.flatMap((one, k) => (one === 'matched' ? [[slot[k]!, time[k]!] as const] : []));
      sum.takes += 1;
      sum.wanted += timeOf.size;
      sum.before += right(laid.matches.map((match) => [match.slot, strokes[match.stroke]!.time]));
      sum.after += right(matched);
      sum.between += role.filter((one) => one === 'extra' || one === 'doubled').length;
      if (graded.codes.includes('others-heard')) sum.found += 1;
      if (graded.plain.grading.state !== 'graded') continue;
      const harm = harmDone(alone.plain, graded);
      sum.wrong += harm.wrong;
      sum.told += harm.told;
    }
  }
  const share = (n: number) => `${figure((100 * n) / sum.wanted, 1)} %`;
  const each = (n: number) => figure(n / sum.takes, 1);
  const row = [
    `${underDb} dB`,
    share(sum.before),
    share(sum.after),
    each(sum.between),
    `${sum.found} of ${sum.takes}`,
    each(sum.wrong),
    each(sum.told),
  ];
  console.log(row.join(' | '));
  return row;
});

const text = `# Somebody else plays in the room

Rendered takes of the kinds in \`tests/bench/check-takes.ts\` that set no threshold, seeds ${seeds.join(', ')}: beside the player
somebody practises another exercise on another drum in a school's reverberant room, at the same tempo, at 0.9 or at 1.08 of
it. The level is that of the other's accents under the player's; taps lie about 15 dB under accents.

*Right*: slots with the stroke that was played for them, within ${1000 * nearS} ms; *before*, where every stroke is taken for the player's.
*Between*: strokes a take that are left between those on slots. *Found*: takes in which the check of the recording says so.
Of about 33 figures a take: *wrong*, outside the interval of the player alone, were nothing refused; *told* all the same.

Made by \`npx tsx tests/bench/company.ts ${seeds.join(',')}\`.

${markdownTable(['others under the player', 'right before', 'right', 'between', 'found', 'wrong', 'told'], rows)}
`;
writeFileSync('reports/company.md', text);
