import type { Hand } from '../core/exercise/sheet.ts';
import type { TakeResult } from '../core/result/take-result.ts';
import type { ChartEntry } from './chart-entry.ts';
import { deviationScale } from './deviation-scale.ts';
import { plugins, still } from './frame.ts';
import { type GradedStroke, gradedStrokes } from './graded-strokes.ts';
import { levelScale } from './level-scale.ts';
import type { Look } from './look.ts';
import { spreadOf } from './spread-of.ts';
import { strokeOrLabel, strokeSets } from './stroke-sets.ts';
import { decibels, deviationWords } from './stroke-words.ts';

type Timed = GradedStroke & { readonly deviationMs: number; readonly hand: Hand };

/** Strokes of a hand below which it says nothing. Our judgement. */
const fewestStrokes = 6;

const handNames = { R: 'right', L: 'left' } as const;

interface Cloud {
  readonly hand: Hand;
  readonly accent: boolean;
  readonly strokes: readonly Timed[];
  readonly middleMs: number;
  readonly middleDb: number;
}

/** Accents and taps of each hand, for kinds that both hands play; none where hands aren't told. */
function clouds(result: TakeResult): Cloud[] {
  const timed = gradedStrokes(result).filter(
    (stroke): stroke is Timed => stroke.deviationMs !== null && stroke.hand !== null,
  );
  return [true, false].flatMap((accent) => {
    const both = (['R', 'L'] as const).map((hand) => {
      const strokes = timed.filter((stroke) => stroke.accent === accent && stroke.hand === hand);
      return {
        hand,
        accent,
        strokes,
        middleMs: spreadOf(strokes.map((s) => s.deviationMs))?.middle ?? 0,
        middleDb: spreadOf(strokes.map((s) => s.levelDb))?.middle ?? 0,
      };
    });
    return both.some((cloud) => cloud.strokes.length < fewestStrokes) ? [] : both;
  });
}

/** The middles of the hands' clouds: an upright cross for the right, a slanted one for the left. */
function middles(found: readonly Cloud[], look: Look) {
  return (['R', 'L'] as const).map((hand) => ({
    label: `middle, ${handNames[hand]}`,
    data: found.filter((cloud) => cloud.hand === hand).map((c) => ({ x: c.middleMs, y: c.middleDb })),
    order: 1,
    pointStyle: hand === 'R' ? ('cross' as const) : ('crossRot' as const),
    pointRadius: 11,
    pointHoverRadius: 12,
    borderColor: look.palette.ink,
    backgroundColor: look.palette.ink,
    borderWidth: 3,
  }));
}

/** Timing against level of every stroke, right hand full and left hollow: alike hands lie on one another. */
export const handClouds: ChartEntry = {
  id: 'hand-clouds',
  question: 'Do both hands do the same?',
  needs: `hands that can be told, and at least ${fewestStrokes} accents or ${fewestStrokes} taps of each`,
  draw: (result, look) => {
    const found = clouds(result);
    if (found.length === 0) return null;
    const across = deviationScale(look);
    const groups = found.map(({ strokes }) =>
      strokes.map(({ deviationMs, levelDb, stroke, accent, hand }) => ({
        x: deviationMs,
        y: levelDb,
        stroke,
        accent,
        hand,
      })),
    );
    return {
      type: 'scatter',
      data: { datasets: [...strokeSets(groups, look), ...middles(found, look)] },
      options: {
        ...still,
        scales: {
          x: { ...across, ticks: { ...across.ticks, maxTicksLimit: 7 } },
          y: levelScale(look),
        },
        plugins: plugins<'scatter'>(look, handClouds.question, strokeOrLabel(result)),
      },
    } as ReturnType<ChartEntry['draw']>;
  },
  text: (result) => {
    const found = clouds(result);
    const parts = [true, false].flatMap((accent) => {
      const [right, left] = found.filter((cloud) => cloud.accent === accent);
      if (right === undefined || left === undefined) return [];
      const late = left.middleMs - right.middleMs;
      const loud = left.middleDb - right.middleDb;
      const when =
        Math.abs(late) < 0.05
          ? 'together with'
          : `${Math.abs(late).toFixed(1)} ms ${late > 0 ? 'after' : 'before'}`;
      const how =
        Math.abs(loud) < 0.05
          ? 'as loud as they are'
          : `${Math.abs(loud).toFixed(1)} dB ${loud < 0 ? 'below' : 'above'} them`;
      return [
        `${accent ? 'accents' : 'taps'} of the left hand lie ${when} the right's against the even place, ${how}`,
      ];
    });
    return `Every stroke by timing and level, the hands on top of each other where they do the same. In the middle, ${parts.join('; ')}.`;
  },
  table: (result) => ({
    head: ['Kind', 'Strokes', 'Middle of timing', 'Middle of level'],
    rows: clouds(result).map(({ hand, accent, strokes, middleMs, middleDb }) => [
      `${accent ? 'accents' : 'taps'}, ${handNames[hand]}`,
      `${strokes.length}`,
      deviationWords(middleMs),
      decibels(middleDb),
    ]),
  }),
};
