/** The colours of a picture, as hexadecimal RGB. No meaning rests on a colour alone: shape and dash repeat it. */
export interface Palette {
  readonly paper: string;
  readonly ink: string;
  /** Text and lines of second rank. */
  readonly quiet: string;
  readonly grid: string;
  /** Accents, the right hand, the score: the first of two. */
  readonly first: string;
  /** Taps, the left hand: the second of two. */
  readonly second: string;
  /** Areas behind the first and the second. */
  readonly firstArea: string;
  readonly secondArea: string;
}

/**
 * Two hues that stay apart for the three kinds of colour blindness and in grey: a deep blue-green and a lighter
 * rust. Contrast against the paper is at least 3:1 for marks and 4.5:1 for text (WCAG 2.2, 1.4.11 and 1.4.3).
 */
export const lightPalette: Palette = {
  paper: '#fffdf8',
  ink: '#22262b',
  quiet: '#5b6269',
  grid: '#e3e0d8',
  first: '#0b4f5c',
  second: '#b8622b',
  firstArea: '#d3e4e6',
  secondArea: '#f6e2d3',
};

export const darkPalette: Palette = {
  paper: '#1b1f23',
  ink: '#ece8df',
  quiet: '#aab0b5',
  grid: '#363c42',
  first: '#8fd0d8',
  second: '#d98a52',
  firstArea: '#27434a',
  secondArea: '#4a3426',
};
