import type { TakeResult } from '../core/result/take-result.ts';
import type { ChartEntry } from './chart-entry.ts';
import { clockTime } from './clock-time.ts';
import { plugins, scale, still, timeScale } from './frame.ts';
import { gradedStrokes } from './graded-strokes.ts';
import { lanes } from './lanes.ts';
import type { Look } from './look.ts';
import { missedStrokes } from './missed-strokes.ts';
import { placeName } from './place-name.ts';
import { spreadOf } from './spread-of.ts';
import { type MarkedPoint, strokeSets } from './stroke-sets.ts';
import { strokeWords } from './stroke-words.ts';
import { shownOf, thinOut, whichStrokes } from './thin-out.ts';

/** Half the height of a lane, lanes being 1 apart. */
const laneReach = 0.42;
/** Distances from even that fill half a lane, ms. */
const reaches = [10, 15, 20, 30, 40, 60, 80, 100, 150, 200];
/** Radius of the softest and the loudest mark, CSS pixels, and the levels below the loudest that they span, dB. */
const radii = { softest: 2, loudest: 6.5, spanDb: 24 };

/** Distance from even that holds all but a twentieth of the strokes, or the next larger round one. */
function reachOf(deviations: readonly number[]): number {
  const sizes = deviations.map(Math.abs).sort((a, b) => a - b);
  const most = sizes[Math.floor(0.95 * (sizes.length - 1))]!;
  return reaches.find((reach) => reach >= most) ?? reaches.at(-1)!;
}

/** Lanes from the first partial at the top, with the height of each one's even line. */
function placedLanes(result: TakeResult) {
  const found = lanes(gradedStrokes(result), { byHand: false });
  return found.map((lane, i) => ({ ...lane, at: found.length - 1 - i }));
}

type Raw = { readonly stroke?: number; readonly slot?: number };

/**
 * Every stroke at its time and partial: above its lane's line when late, below when early, the larger the louder.
 * Missed strokes are crosses on the line of their partial, extra ones stars under all lanes.
 */
export const everyStroke: ChartEntry = {
  id: 'every-stroke',
  question: 'Where in the take do strokes come early, late or not at all?',
  needs: 'strokes whose timing could be measured',
  wide: true,
  printed: true,
  draw: (result, look) => {
    const placed = placedLanes(result);
    if (placed.length === 0) return null;
    const all = placed.flatMap((lane) => lane.strokes);
    const reach = reachOf(all.map((stroke) => stroke.deviationMs));
    const loudest = all.reduce((most, { levelDb }) => Math.max(most, levelDb), Number.NEGATIVE_INFINITY);
    const groups = placed.map(({ at, strokes }) =>
      strokes.map(
        ({ time, deviationMs, stroke, accent, hand }): MarkedPoint => ({
          x: time,
          y: at + laneReach * Math.max(-1, Math.min(1, deviationMs / reach)),
          stroke,
          accent,
          hand,
        }),
      ),
    );
    const small = shownOf(all.length, look.mostStrokes) > 250 ? 0.7 : 1;
    const sets = strokeSets(groups, look).map((set) => ({
      ...set,
      pointRadius: set.data.map(({ stroke }) => small * radiusOf(result.strokes.levelDb[stroke]!, loudest)),
      pointHitRadius: 5,
    }));
    const others = otherMarks(result, placed, look);
    const ends = [...all.map((s) => s.time), ...others.flatMap((set) => set.data.map((point) => point.x))];
    const plain = scale(look, `partial, \u00b1 ${reach} ms`);
    const bottom = others.some((set) => set.data.some((point) => point.y < -0.5)) ? -1.2 : -0.55;
    return {
      type: 'scatter',
      data: { datasets: [...sets, ...others] },
      options: {
        ...still,
        scales: {
          x: timeScale(look, lowest(ends), -lowest(ends.map((x) => -x))),
          y: {
            ...plain,
            type: 'linear',
            min: bottom,
            max: placed.length - 0.45,
            afterBuildTicks: (axis) => {
              axis.ticks = [
                ...placed.map(({ at }) => ({ value: at })),
                ...(bottom < -1 ? [{ value: -1 }] : []),
              ];
            },
            ticks: {
              ...plain.ticks,
              autoSkip: false,
              callback: (value) => placed.find(({ at }) => at === Number(value))?.label ?? 'extra',
            },
            grid: { color: ({ tick }) => ((tick?.value ?? -1) < 0 ? look.palette.grid : look.palette.quiet) },
          },
        },
        plugins: plugins<'scatter'>(look, everyStroke.question, (item) => {
          const { stroke, slot } = item.raw as Raw;
          if (stroke !== undefined) return strokeWords(result, stroke);
          return slot === undefined ? '' : [placeName(result, slot), 'missed'];
        }),
      },
    } as ReturnType<ChartEntry['draw']>;
  },
  text: (result) => {
    const found = placedLanes(result);
    const strokes = found.flatMap((lane) => lane.strokes);
    const sizes = spreadOf(strokes.map((stroke) => Math.abs(stroke.deviationMs)))!;
    const far = strokes.reduce((a, b) => (Math.abs(b.deviationMs) > Math.abs(a.deviationMs) ? b : a));
    const missed = missedStrokes(result).length;
    const extra = extraStrokes(result).length;
    return (
      `${whichStrokes(strokes.length)} along the take, a lane a partial: late above its line, early below; larger marks are louder. Half of them lie within ` +
      `${sizes.middle.toFixed(1)} ms of even; the farthest is ${Math.abs(far.deviationMs).toFixed(1)} ms ` +
      `${far.deviationMs > 0 ? 'late' : 'early'} at ${clockTime(far.time, 1)}. Missed: ${missed}; extra: ${extra}.`
    );
  },
  table: (result) => ({
    head: ['Partial', 'Strokes', 'Over 10 ms early', 'Over 10 ms late', 'Missed'],
    rows: placedLanes(result).map(({ label, strokes }) => {
      const [{ partial, divisions }] = [strokes[0]!];
      const missed = missedStrokes(result).filter(
        ({ slot }) => result.slots.partial[slot] === partial && result.slots.divisions[slot] === divisions,
      );
      const early = strokes.filter((stroke) => stroke.deviationMs < -10).length;
      const late = strokes.filter((stroke) => stroke.deviationMs > 10).length;
      return [label, `${strokes.length}`, `${early}`, `${late}`, `${missed.length}`];
    }),
  }),
};

function radiusOf(levelDb: number, loudest: number): number {
  const share = Math.max(0, 1 - (loudest - levelDb) / radii.spanDb);
  return radii.softest + share * (radii.loudest - radii.softest);
}

const lowest = (values: readonly number[]) => values.reduce((a, b) => Math.min(a, b));

function extraStrokes({ strokes }: TakeResult): number[] {
  return strokes.role.flatMap((role, i) => (role === 'extra' || role === 'doubled' ? [i] : []));
}

function otherMarks(result: TakeResult, placed: ReturnType<typeof placedLanes>, look: Look) {
  const ink = { borderColor: look.palette.ink, backgroundColor: look.palette.ink, borderWidth: 2, order: 1 };
  const missed = missedStrokes(result).flatMap(({ slot, time }) => {
    const { partial, divisions } = result.slots;
    const lane = placed.find(
      ({ strokes: [first] }) => first!.partial === partial[slot] && first!.divisions === divisions[slot],
    );
    return lane === undefined ? [] : [{ x: time, y: lane.at, slot }];
  });
  const extra = extraStrokes(result).map((stroke) => ({ x: result.strokes.time[stroke]!, y: -1, stroke }));
  const sets = [
    {
      label: 'missed',
      data: [...thinOut(missed, 200)],
      pointStyle: 'crossRot' as const,
      pointRadius: 6,
      ...ink,
    },
    { label: 'extra', data: [...thinOut(extra, 200)], pointStyle: 'star' as const, pointRadius: 5, ...ink },
  ];
  return sets.filter((set) => set.data.length > 0);
}
