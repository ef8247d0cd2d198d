import type { ChartConfiguration } from 'chart.js';
import type { TakeResult } from '../core/result/take-result.ts';
import type { Look } from './look.ts';

/** A picture's figures as text, for those who read rather than look. */
export interface ChartTable {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** One picture of a take: the question it answers, its drawing, and the same in words and figures. */
export interface ChartEntry {
  readonly id: string;
  readonly question: string;
  /** What a take must hold for this picture, for the reader of a report that leaves it out. */
  readonly needs: string;
  /** Follows the whole take, and so wants the width of the page. */
  readonly wide?: true;
  /** Among the few that a printed report has room for. */
  readonly printed?: true;
  /** Null where the take holds nothing to draw; text and table are asked only where there is a drawing. */
  readonly draw: (result: TakeResult, look: Look) => ChartConfiguration | null;
  readonly text: (result: TakeResult) => string;
  readonly table: (result: TakeResult) => ChartTable;
}
