import type { TakeResult } from '../core/result/take-result.ts';
import type { ChartEntry } from './chart-entry.ts';
import { clockTime } from './clock-time.ts';
import { deviationScale } from './deviation-scale.ts';
import { plugins, still, timeScale } from './frame.ts';
import { type GradedStroke, gradedStrokes } from './graded-strokes.ts';
import { beatsOfLines } from './main-neighbours.ts';
import { spreadOf } from './spread-of.ts';
import { runOf } from './steps-between.ts';
import { deviationWords } from './stroke-words.ts';
import { pointsShown, thinOut } from './thin-out.ts';

/** Beats of a run below which there is nothing slow in it: three windows of the local tempo, as the measure has it. */
const fewestBeats = 12;

/** Sway below which its extremes aren't told, ms. */
const leastSwayMs = 1;

interface Point {
  readonly x: number;
  readonly y: number;
}

type Timed = GradedStroke & { readonly deviationMs: number };

/** Beats from the run's first stroke to each of its strokes, as the sheet lays them out. */
function positions({ slots, sheet }: TakeResult, strokes: readonly Timed[]): number[] {
  const beats = beatsOfLines({ slots });
  /** Beat on which each repeat begins, by its first slot seen. */
  let begin = 0;
  return strokes.map(({ slot }, i) => {
    const before = strokes[i - 1]?.slot;
    if (before !== undefined) {
      const [line, lineBefore] = [slots.line[slot]!, slots.line[before]!];
      if (line === lineBefore) begin += (slots.repeat[slot]! - slots.repeat[before]!) * beats.get(line)!;
      else {
        const own = sheet.lines[lineBefore]!;
        const left = own.repeats - slots.repeat[before]!;
        begin += left * beats.get(lineBefore)! + own.restBeats + slots.repeat[slot]! * beats.get(line)!;
      }
    }
    return begin + slots.position[slot]!;
  });
}

/** Graded runs at one asked tempo, each as its local beat's lag behind its own steady tempo, ms. */
function runs(result: TakeResult): Point[][] {
  const { sheet, slots } = result;
  const groups = new Map<string, Timed[]>();
  for (const stroke of gradedStrokes(result)) {
    const run = runOf(result, stroke.slot);
    if (run < 0 || stroke.deviationMs === null) continue;
    const key = `${run} ${sheet.lines[slots.line[stroke.slot]!]?.bpm}`;
    const group = groups.get(key) ?? [];
    group.push({ ...stroke, deviationMs: stroke.deviationMs });
    groups.set(key, group);
  }
  return [...groups.values()].flatMap((strokes) => {
    const at = positions(result, strokes);
    if (at.at(-1)! - at[0]! < fewestBeats) return [];
    const local = strokes.map((stroke) => stroke.time - stroke.deviationMs / 1000);
    const [meanX, meanY] = [mean(at), mean(local)];
    const slope =
      at.reduce((sum, x, i) => sum + (x - meanX) * (local[i]! - meanY), 0) /
      at.reduce((sum, x) => sum + (x - meanX) ** 2, 0);
    return [
      strokes.map(({ time }, i) => ({ x: time, y: 1000 * (local[i]! - meanY - slope * (at[i]! - meanX)) })),
    ];
  });
}

/** A rest this long, s, breaks the curve: nothing was played there. */
const longestStep = 2;

/** Points thinned where there are many, with gaps where nothing was played and at the end. */
function broken(points: readonly Point[]): Point[] {
  const rests = points.flatMap(({ x }, i) => {
    const after = points[i + 1];
    return after === undefined || after.x - x > longestStep ? [x] : [];
  });
  const shown = thinOut(points, pointsShown);
  return shown.flatMap((point, i) => {
    const end = shown[i + 1]?.x ?? Number.POSITIVE_INFINITY;
    return rests.some((rest) => point.x <= rest && rest < end)
      ? [point, { x: point.x, y: Number.NaN }]
      : [point];
  });
}

const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;

/** The local beat against the run's own steady tempo, ms: above, it lags behind; below, it runs before it. */
export const wanderCurve: ChartEntry = {
  id: 'wander-curve',
  question: 'Does the beat sway slowly round a steady one?',
  needs: `at least ${fewestBeats} beats in one go`,
  draw: (result, look) => {
    const found = runs(result);
    if (found.length === 0) return null;
    const plain = deviationScale(look);
    const data = found.flatMap((points) => broken(points));
    return {
      type: 'scatter',
      data: {
        datasets: [
          {
            label: "beat as played, against the run's own steady tempo",
            data,
            showLine: true,
            pointRadius: 0,
            pointHitRadius: 10,
            pointStyle: 'line',
            borderColor: look.palette.first,
            backgroundColor: look.palette.first,
            borderWidth: 2.5,
          },
        ],
      },
      options: {
        ...still,
        scales: {
          x: timeScale(look, found[0]![0]!.x, found.at(-1)!.at(-1)!.x),
          y: { ...plain, title: { ...plain.title, text: 'milliseconds from the steady beat' } },
        },
        plugins: plugins<'scatter'>(look, wanderCurve.question, (item) => {
          const { x, y } = item.raw as Point;
          return `beat ${deviationWords(y)} against a steady one at ${clockTime(x)}`;
        }),
      },
    } as ReturnType<ChartEntry['draw']>;
  },
  text: (result) => {
    const points = runs(result).flat();
    const { lowest, highest } = spreadOf(points.map((point) => point.y))!;
    const at = (y: number) => clockTime(points.find((point) => point.y === y)!.x);
    const start =
      "The beat as played against the take's own steady tempo; single strokes are left out of it.";
    if (highest - lowest < leastSwayMs) return `${start} It stays within ${leastSwayMs} ms.`;
    return `${start} At most ${deviationWords(highest)} at ${at(highest)} and ${deviationWords(lowest)} at ${at(lowest)}.`;
  },
  table: (result) => ({
    head: ['Run', 'Earliest', 'Latest'],
    rows: runs(result).map((points) => {
      const { lowest, highest } = spreadOf(points.map((point) => point.y))!;
      const when = `${clockTime(points[0]!.x)} to ${clockTime(points.at(-1)!.x)}`;
      return [when, deviationWords(lowest), deviationWords(highest)];
    }),
  }),
};
