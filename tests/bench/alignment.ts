/**
 * Rendered performances, heard and laid on their sheets. `tsx tests/bench/alignment.ts [takes of each kind]` writes
 * reports/alignment.md.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { slotF } from '../core/alignment/judge-alignment.ts';
import { line, sheetOf } from '../core/alignment/made-sheet.ts';
import { realities } from '../core/alignment/realities.ts';
import { type AlignedTake, alignRendered } from './alignment-takes.ts';
import { figure, markdownTable } from './markdown-table.ts';

const takes = Number(process.argv[2] ?? 7);
/** Far from the seeds of the tests. */
const firstSeed = 20_000;

const total = (list: readonly AlignedTake[], of: (take: AlignedTake) => number) =>
  list.reduce((sum, take) => sum + of(take), 0);
const fOf = (list: readonly AlignedTake[]) =>
  slotF({
    right: total(list, ({ judgement }) => judgement.right),
    found: total(list, ({ judgement }) => judgement.found),
    wanted: total(list, ({ judgement }) => judgement.wanted),
  });
const rightOf = (list: readonly AlignedTake[]) =>
  total(list, ({ judgement }) => (judgement.segmentsRight ? 1 : 0));
const cells = (list: readonly AlignedTake[]) => [
  `${rightOf(list)} of ${list.length}`,
  figure(fOf(list), 4),
  figure(Math.min(...list.map(({ judgement }) => slotF(judgement))), 3),
  String(total(list, ({ judgement }) => judgement.wronglyGraded)),
  `${total(list, ({ heard }) => heard)} of ${total(list, ({ played }) => played)}`,
];

/** Takes to a click come twice: begun on the first stroke, and with the click's count-in. */
const countIn = 4;
const kinds = Object.entries(realities).flatMap(([name, reality]) =>
  name === 'with a click'
    ? [
        { name: 'with a click from the first stroke on', reality, lead: 0 },
        { name: 'with a click, counted in', reality, lead: countIn },
      ]
    : [{ name, reality, lead: 0 }],
);
const byKind = kinds.map(({ name, reality, lead }, kind) => {
  const list = Array.from({ length: takes }, (_, k) =>
    alignRendered(reality(firstSeed + 101 * kind + k), lead),
  );
  console.log(name, rightOf(list), fOf(list));
  return { name, list };
});
const all = byKind.flatMap(({ list }) => list);
const sloppy = byKind.filter(({ name }) => name.startsWith('sloppy')).flatMap(({ list }) => list);

/** Strokes all alike from somewhere in a row: nothing tells one beat's place from the next partial's. */
const alike = sheetOf(line('RLR LRL RLR LRL', { repeats: 4 }));
const doubts = [false, true].map((click) => {
  const list = Array.from({ length: takes }, (_, k) =>
    alignRendered({ sheet: alike, seed: firstSeed + 5000 + k, click, spreadDb: 1.2 }),
  );
  const said = list.filter(({ alignment }) => alignment.doubt?.code === 'phase-not-told').length;
  return [click ? 'with a click' : 'without a click', `${said} of ${takes}`, figure(fOf(list), 4)];
});
const doubted = all.filter(({ alignment }) => alignment.doubt !== null).length;

const header = [
  'kind of take',
  'segments right',
  'F of slots',
  'worst take',
  'wrongly graded',
  'strokes heard',
];
mkdirSync('reports', { recursive: true });
writeFileSync(
  'reports/alignment.md',
  `# Strokes on their places

${all.length} performances, ${takes} of each kind, none of them used in making the program: played with faults and accidents by a
model of a player, rendered on three kinds of pad, heard and laid on the sheet by the program. Segments are right
where graded runs begin at the strokes at which they truly begin, one stroke's leeway, a slip anywhere between the accents round it. F of
slots weighs strokes on their true slots against all that were graded and all that should have been, strokes not heard
included. Wrongly graded: strokes of an abandoned or surplus run that counted.

Made by \`npx tsx tests/bench/alignment.ts ${takes}\`.

${markdownTable(header, [...byKind.map(({ name, list }) => [name, ...cells(list)]), ['**all**', ...cells(all)], ['**sloppy ones**', ...cells(sloppy)]])}

Segments are right in ${figure((100 * rightOf(all)) / all.length, 1)} % of all takes. ${doubted} of them come with a doubt.

## Where nothing tells the place

Even triplets without an accent: without a click any partial could be the first, and the result has to say so.

${markdownTable(['take', 'doubt said', 'F of slots'], doubts)}
`,
);
