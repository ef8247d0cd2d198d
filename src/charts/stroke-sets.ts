import type { TooltipItem } from 'chart.js';
import type { Hand } from '../core/exercise/sheet.ts';
import type { TakeResult } from '../core/result/take-result.ts';
import type { StrokePoint } from './frame.ts';
import type { Look } from './look.ts';
import { type Mark, markStyle, marks } from './marks.ts';
import { strokeWords } from './stroke-words.ts';
import { shownOf, thinOut } from './thin-out.ts';

/** A stroke's place in a picture, and what its mark tells. */
export interface MarkedPoint extends StrokePoint {
  readonly accent: boolean;
  readonly hand: Hand | null;
}

/**
 * One dataset a kind of stroke, in the order of the legend, of `groups` of points. Where there are too many for one
 * picture each group is thinned by itself, so that none disappears.
 */
export function strokeSets(groups: readonly (readonly MarkedPoint[])[], look: Look) {
  const count = groups.reduce((sum, group) => sum + group.length, 0);
  const shown = shownOf(count, look.mostStrokes);
  return marks.flatMap((mark) => {
    const data = groups
      .map((group) => group.filter((point) => isOf(mark, point)))
      .flatMap((own) => thinOut(own, Math.ceil((own.length * shown) / count)))
      .map(({ x, y, stroke }) => ({ x, y, stroke }));
    if (data.length === 0) return [];
    return [{ label: mark.label, data, order: 2, ...markStyle(mark, look.palette, shown) }];
  });
}

/** Words for the box over a point: of its stroke, or the name of what isn't a stroke. */
export function strokeOrLabel(result: TakeResult) {
  return (item: TooltipItem<'scatter'>) => {
    const { stroke } = item.raw as Partial<StrokePoint>;
    return stroke === undefined ? (item.dataset.label ?? '') : strokeWords(result, stroke);
  };
}

const isOf = (mark: Mark, point: MarkedPoint) => mark.accent === point.accent && mark.hand === point.hand;
