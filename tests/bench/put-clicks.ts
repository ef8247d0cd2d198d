import { lineFromText } from '../../src/core/exercise/line-from-text.ts';
import { risingSheet } from '../../src/core/exercise/rising-sheet.ts';
import { hearStrokes } from '../../src/core/onsets/hear-strokes.ts';
import { median } from '../../src/core/stats/median.ts';
import { quantile } from '../../src/core/stats/quantile.ts';
import { memorySource } from './bench-take.ts';
import { figure, markdownTable } from './markdown-table.ts';
import { places, takeWithClick } from './put-click-takes.ts';
import { scoreTake, type TakeScore } from './score-take.ts';

/**
 * Strokes beside the page's own click, with and without knowing when it was put out: a tempo that rises from 50 to 210, and
 * one tempo as a control. `tsx tests/bench/put-clicks.ts [takes] [seed]` prints a table of reports/detection.md.
 */
const takes = Number(process.argv[2] ?? 1);
const seed = process.argv[3] ?? 'reported';
const line = lineFromText('>RLR >LRL', { repeats: 2 });
if (!line.ok) throw new Error('no line');
const rising = risingSheet({ ...line.line, repeats: 4 }, { from: 50, to: 210, step: 20 });
const even = risingSheet({ ...line.line, repeats: 36 }, { from: 116, to: 116, step: 1 });
const player = { scatter: 0.05, missed: 0.01, stumbles: 0, fall: { kind: 'none' }, from: 99 } as const;
const sounds = [
  { name: 'beats', click: {} },
  { name: 'bell, thirds', click: { bell: true, subdivisions: 3 } },
] as const;

function figures(scores: readonly TakeScore[]): string[] {
  const sum = (of: (score: TakeScore) => number) => scores.reduce((all, score) => all + of(score), 0);
  const errors = scores.flatMap((score) => score.errors);
  const within = (values: readonly number[]) => quantile(values.map(Math.abs), 0.95);
  const levels = (accent: boolean) => median(errors.filter((e) => e.accent === accent).map((e) => e.level!));
  return [
    figure(sum((s) => s.within10Ms) / sum((s) => s.strokes), 3),
    figure(sum((s) => s.within10Ms) / sum((s) => s.heard), 3),
    figure(1000 * within(errors.map(({ time }) => time)), 2),
    figure(within(errors.map(({ level }) => level!)), 2),
    figure(levels(true) - levels(false), 2),
  ];
}

const rows: string[][] = [];
for (const [tempo, sheet] of [
  ['rises', rising],
  ['one', even],
] as const)
  for (const place of places)
    for (const { name, click } of sounds)
      for (const clickDb of [-30, -20, -8]) {
        const unknown: TakeScore[] = [];
        const known: TakeScore[] = [];
        for (let i = 0; i < takes; i++) {
          const kind = (['rubber-pad', 'soft-pad', 'snare'] as const)[i % 3]!;
          const asked = { sheet, place, click, clickDb, kind, player, seed: `${seed} ${i} ${place.name}` };
          const { take, playedClick } = takeWithClick(asked);
          const source = memorySource(take.samples, take.sampleRate);
          const pads = (put?: typeof playedClick.sounds) =>
            hearStrokes(source, undefined, put).sounds.filter(({ sound }) => sound === 'pad');
          unknown.push(scoreTake(take, pads()));
          known.push(scoreTake(take, pads(playedClick.sounds)));
        }
        const where = [tempo, place.name, name, `${clickDb}`];
        rows.push([...where, 'no', ...figures(unknown)], [...where, 'yes', ...figures(known)]);
        console.error(
          rows
            .slice(-2)
            .map((row) => row.join(' | '))
            .join('\n'),
        );
      }
const heads = ['recall', 'precision', 'time, ms', 'level, dB', 'ratio, dB'];
console.log(markdownTable(['tempo', 'place', 'click', 'dBFS', 'known', ...heads], rows));
