import type { MeasureResult } from '../core/result/take-result.ts';

type PartName = keyof MeasureResult['scope'];

/** Parts of a take that a reader of the report acts on, by measure; the others stand in the JSON file. */
const shownParts: Readonly<Record<string, readonly PartName[]>> = {
  'timing-spread': ['hand', 'line'],
  'timing-spread-share': ['hand', 'line'],
  placement: ['partial'],
  'placement-share': ['partial'],
  'accent-bend': ['place'],
  'accent-bend-share': ['place'],
  'accent-to-tap-ratio': ['hand', 'line'],
  separation: ['hand'],
  'tap-ceiling': ['line'],
  'tap-spread': ['hand'],
  'accent-spread': ['hand'],
  'accent-match': ['hand', 'partial'],
  'turned-accents': ['line'],
  missed: ['line'],
};

/**
 * Whether the report shows a figure: those of the whole take, and of the parts that matter for the measure.
 *
 * @example isShownInReport({ id: 'placement', scope: { partial: 2 } }) // true
 */
export function isShownInReport({ id, scope }: Pick<MeasureResult, 'id' | 'scope'>): boolean {
  const names = Object.keys(scope) as PartName[];
  return names.every((name) => shownParts[id]?.includes(name));
}
