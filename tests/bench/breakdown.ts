import { seeded } from '../../fixtures/generator/random.ts';
import { beginCourse } from '../../src/core/click-track/breakdown/begin-course.ts';
import {
  type Breakdown,
  clearlyHeard,
  followCourse,
} from '../../src/core/click-track/breakdown/follow-course.ts';
import { plainClick } from '../../src/core/click-track/click-plan.ts';
import { planClicks } from '../../src/core/click-track/plan-clicks.ts';
import { liveStrokes } from '../../src/core/onsets/live-strokes.ts';
import { growingSource } from '../../src/core/signal/growing-source.ts';
import { wilsonInterval } from '../../src/core/stats/wilson-interval.ts';
import { type Fall, type RisingPlayer, recordRising, risingTake, surroundings } from './breakdown-takes.ts';
import { figure, markdownTable } from './markdown-table.ts';

/**
 * Whether a take whose tempo rises is stopped where the player breaks down, and never before: rendered takes heard as
 * the page hears them while they are played. `tsx tests/bench/breakdown.ts [takes] [seed] [row]` prints `reports/breakdown.md`.
 */
const takes = Number(process.argv[2] ?? 100);
const seed = process.argv[3] ?? 'reported';
/** The line in which a player breaks down, counted from 0; before it a practised one plays. */
const from = 5;

interface Row {
  readonly name: string;
  readonly player: Partial<RisingPlayer>;
  /** How many times as many takes. */
  readonly times?: number;
}

const falls = (name: string, fall: Fall): Row => ({ name, player: { fall } });
const rows: readonly Row[] = [
  { name: 'none: scatter 5 % of a step', player: {}, times: 15 },
  { name: 'none: scatter 8 %, 3 % missed', player: { scatter: 0.08, missed: 0.03 } },
  { name: 'none: scatter 10 %, 5 % missed', player: { scatter: 0.1, missed: 0.05 } },
  falls('scatter 18 % of a step', { kind: 'scatter', share: 0.18 }),
  falls('scatter 25 %', { kind: 'scatter', share: 0.25 }),
  falls('scatter 35 %', { kind: 'scatter', share: 0.35 }),
  falls('lags 3 % behind the click', { kind: 'lags', share: 0.03 }),
  falls('lags 8 %', { kind: 'lags', share: 0.08 }),
  falls('misses half of the strokes', { kind: 'drops', share: 0.5 }),
  falls('stops', { kind: 'stops' }),
];

function brokeIn(player: RisingPlayer, name: string): Breakdown | null {
  const random = seeded(name);
  const sheet = risingTake(random);
  const { samples, sampleRate, trackAt } = recordRising(sheet, player, surroundings(random), name);
  let course = beginCourse(sheet, planClicks(sheet, plainClick));
  const coming = growingSource(sampleRate);
  const live = liveStrokes();
  const strokes: number[] = [];
  const block = Math.round(0.1 * sampleRate);
  for (let at = 0; at < samples.length && course.broke === null; at += block) {
    coming.add(at, samples.subarray(at, at + block));
    const told = live.goOn(coming.source());
    strokes.push(...told.strokes.filter(clearlyHeard).map(({ time }) => time - trackAt));
    course = followCourse(course, strokes, told.heardSeconds - trackAt);
  }
  return course.broke;
}

const percent = (share: number) => figure(100 * share, 1);
const wanted = process.argv[4];
const table = rows
  .filter((_, i) => wanted === undefined || i === Number(wanted))
  .map(({ name, player, times = 1 }) => {
    const count = takes * times;
    const all = {
      scatter: 0.05,
      missed: 0.01,
      stumbles: 0.1,
      fall: { kind: 'none' },
      from,
      ...player,
    } as const;
    const broke = Array.from({ length: count }, (_, i) => brokeIn(all, `${seed} ${i}`));
    const clean = all.fall.kind === 'none';
    const early = broke.filter((one) => one !== null && (clean || one.line < from)).length;
    const late = (lines: number) =>
      clean
        ? ''
        : percent(
            broke.filter((one) => one !== null && one.line >= from && one.line <= from + lines).length /
              count,
          );
    const { low, high } = wilsonInterval(early / count, count, 1.96);
    console.error(
      name,
      broke
        .map((one, i) => (one && (clean || one.line < from) ? `${i}:${one.line}${one.why}` : ''))
        .filter(Boolean)
        .join(' '),
    );
    return [
      name,
      `${count}`,
      `${percent(early / count)} (${percent(low)} to ${percent(high)})`,
      late(0),
      late(1),
      late(4),
    ];
  });
console.log(
  markdownTable(
    [
      'from the sixth tempo on',
      'takes',
      'stopped before, %',
      'stopped there, %',
      'by the next tempo',
      'by the last',
    ],
    table,
  ),
);
