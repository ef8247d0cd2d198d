import { lightPalette, type Palette } from './palette.ts';
import { pointsShown } from './thin-out.ts';

/** How a picture is drawn, whatever it shows. */
export interface Look {
  readonly palette: Palette;
  readonly fontFamily: string;
  /** Size of the text in CSS pixels. */
  readonly fontSize: number;
  /** Puts the question over the picture, for pictures that stand alone. */
  readonly titled: boolean;
  /** Strokes that there is room for. */
  readonly mostStrokes: number;
}

export const plainLook: Look = {
  palette: lightPalette,
  fontFamily: '"Atkinson Hyperlegible", sans-serif',
  fontSize: 13,
  titled: false,
  mostStrokes: pointsShown,
};
