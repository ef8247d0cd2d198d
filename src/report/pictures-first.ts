import type { TakeResult } from '../core/result/take-result.ts';

/** The picture that shows what a piece of advice speaks of, by the advice's code. */
export const shownBy: Readonly<Record<string, string>> = {
  'accents-and-taps-overlap': 'levels',
  'accents-lost': 'levels',
  'accents-uneven': 'levels',
  'accents-off-from-start': 'levels',
  'accents-turned-round': 'every-stroke',
  'bend-at-accent': 'accent-bend',
  'contrast-too-wide': 'ratio-course',
  'fades-at-the-end': 'endurance',
  'hands-apart-in-ratio': 'hand-clouds',
  'hands-apart-in-time': 'hand-clouds',
  'strokes-extra': 'every-stroke',
  'strokes-missed': 'every-stroke',
  'moving-tempo': 'tempo-curve',
  'other-tempo': 'tempo-curve',
  'partial-off-place': 'beat-shape',
  'taps-after-accents-loud': 'tap-neighbours',
  'taps-too-loud': 'levels',
  'taps-uneven': 'levels',
  'timing-uneven': 'every-stroke',
};

/** Pictures that stay unfolded on a narrow screen: every stroke on the grid, and those behind the advice. */
export function picturesFirst({ advice }: Pick<TakeResult, 'advice'>): ReadonlySet<string> {
  return new Set(['every-stroke', ...advice.flatMap(({ code }) => shownBy[code] ?? [])]);
}
