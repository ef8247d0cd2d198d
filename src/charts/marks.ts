import type { Hand } from '../core/exercise/sheet.ts';
import type { Palette } from './palette.ts';

/** How a kind of stroke is marked: accents are triangles, taps circles; the right hand full, the left hollow. */
export interface Mark {
  readonly label: string;
  readonly accent: boolean;
  readonly hand: Hand | null;
}

/** The kinds of stroke a picture can hold, in the order of its legend. */
export const marks: readonly Mark[] = [
  { label: 'accent, right', accent: true, hand: 'R' },
  { label: 'accent, left', accent: true, hand: 'L' },
  { label: 'accent', accent: true, hand: null },
  { label: 'tap, right', accent: false, hand: 'R' },
  { label: 'tap, left', accent: false, hand: 'L' },
  { label: 'tap', accent: false, hand: null },
];

/** The drawing of a mark in a picture of so many strokes: the more, the smaller. */
export function markStyle(mark: Mark, palette: Palette, strokesShown: number) {
  const size = strokesShown > 250 ? 0.6 : strokesShown > 120 ? 0.8 : 1;
  const colour = mark.accent ? palette.first : palette.second;
  const pointStyle: 'triangle' | 'circle' = mark.accent ? 'triangle' : 'circle';
  return {
    pointStyle,
    pointRadius: size * (mark.accent ? 5 : 3.5),
    pointHoverRadius: mark.accent ? 7 : 5.5,
    borderColor: colour,
    backgroundColor: mark.hand === 'L' ? palette.paper : colour,
    borderWidth: size < 1 ? 1 : 1.5,
  };
}
