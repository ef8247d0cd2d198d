import type { TakeResult } from '../result/take-result.ts';
import { measuredOutcome } from '../scoring/find-measure.ts';

/** One figure of a take that is followed from day to day. */
export interface ComparedFigure {
  /** Id of the measure it comes from, of the whole take. */
  readonly id: string;
  readonly unit: 'ms' | '%' | 'dB' | 'share';
  /** Which way is clearer; `either`: more is only different. */
  readonly better: 'low' | 'high' | 'either';
  /** Spreads are compared as ratios, the rest as differences. */
  readonly scale: 'ratio' | 'difference';
  /** Depends on pad, microphone and place, beyond what the strokes do. */
  readonly ofLevels: boolean;
  /** Sign doesn't matter: only the distance from zero is followed. */
  readonly distance?: true;
}

/** What is followed over days: what the shipped scores rest on. */
export const comparedFigures: readonly ComparedFigure[] = [
  { id: 'timing-spread', unit: 'ms', better: 'low', scale: 'ratio', ofLevels: false },
  { id: 'placement-share', unit: '%', better: 'low', scale: 'difference', ofLevels: false, distance: true },
  { id: 'accent-bend-share', unit: '%', better: 'low', scale: 'difference', ofLevels: false, distance: true },
  { id: 'hand-offset-share', unit: '%', better: 'low', scale: 'difference', ofLevels: false, distance: true },
  { id: 'accent-to-tap-ratio', unit: 'dB', better: 'either', scale: 'difference', ofLevels: true },
  { id: 'separation', unit: 'share', better: 'high', scale: 'difference', ofLevels: true },
  { id: 'tap-spread', unit: 'dB', better: 'low', scale: 'ratio', ofLevels: true },
  { id: 'accent-spread', unit: 'dB', better: 'low', scale: 'ratio', ofLevels: true },
  { id: 'tempo-change', unit: '%', better: 'low', scale: 'difference', ofLevels: false, distance: true },
  { id: 'missed-and-extra', unit: '%', better: 'low', scale: 'difference', ofLevels: false },
];

/** A figure of one take with its 95 % interval; for a distance, of the distance. */
export interface TakeFigure {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly strokes: number;
}

/**
 * A followed figure of a take, or null where it wasn't measured.
 *
 * @example a tempo change of −1.2 % (−2 to −0.4) // { value: 1.2, low: 0.4, high: 2 }
 */
export function takeFigure(result: TakeResult, figure: ComparedFigure): TakeFigure | null {
  const outcome = measuredOutcome(result.measures, figure.id);
  if (outcome === undefined) return null;
  const { value, low, high, strokes } = outcome;
  return followed(figure, { value, low, high, strokes });
}

/** A measured figure as it is followed: where its sign doesn't matter, its distance from zero. */
export function followed(figure: ComparedFigure, measured: TakeFigure): TakeFigure {
  if (figure.distance === undefined) return measured;
  const { value, low, high, strokes } = measured;
  const [a, b] = [Math.abs(low), Math.abs(high)];
  const across = low <= 0 && high >= 0;
  return { value: Math.abs(value), low: across ? 0 : Math.min(a, b), high: Math.max(a, b), strokes };
}
