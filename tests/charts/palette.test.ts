import { describe, expect, it } from 'vitest';
import { darkPalette, lightPalette, type Palette } from '../../src/charts/palette.ts';

type Rgb = readonly [number, number, number];

const rgb = (hex: string) =>
  [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255) as never as Rgb;
const linear = (c: number) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
const luminance = (colour: Rgb) => {
  const [r, g, b] = colour.map(linear) as never as Rgb;
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};

/** Contrast ratio by WCAG 2.2, "relative luminance" and "contrast ratio". */
function contrast(a: string, b: string): number {
  const [dark, light] = [luminance(rgb(a)), luminance(rgb(b))].sort((x, y) => x - y) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

/** Full colour blindness of three kinds, linear RGB: Machado, Oliveira & Fernandes 2009, severity 1. */
const blindness = {
  protan: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deutan: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritan: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
};

function seen(colour: string, matrix: readonly number[]): Rgb {
  const from = rgb(colour).map(linear);
  return [0, 3, 6].map((row) => {
    const sum = from.reduce((total, c, i) => total + c * matrix[row + i]!, 0);
    return Math.min(1, Math.max(0, sum));
  }) as never as Rgb;
}

describe('contrast', () => {
  it("agrees with ratios known from the standard's examples", () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9);
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2); // widely quoted; from memory
  });
});

describe.each([
  ['lightPalette', lightPalette],
  ['darkPalette', darkPalette],
] as [string, Palette][])('%s', (_, palette) => {
  it('has text at 4.5:1 and marks at 3:1 against the paper (WCAG 2.2, 1.4.3 and 1.4.11)', () => {
    expect(contrast(palette.ink, palette.paper)).toBeGreaterThan(7);
    expect(contrast(palette.quiet, palette.paper)).toBeGreaterThan(4.5);
    for (const mark of [palette.first, palette.second])
      expect(contrast(mark, palette.paper)).toBeGreaterThan(3);
  });

  it('has marks that stand out of their own areas', () => {
    expect(contrast(palette.first, palette.firstArea)).toBeGreaterThan(3);
    expect(contrast(palette.second, palette.secondArea)).toBeGreaterThan(3);
  });

  it('has two hues that differ in grey and for every kind of colour blindness', () => {
    expect(contrast(palette.first, palette.second)).toBeGreaterThan(1.5);
    for (const matrix of Object.values(blindness)) {
      const [a, b] = [seen(palette.first, matrix), seen(palette.second, matrix)];
      const distance = Math.hypot(...a.map((c, i) => Math.cbrt(c) - Math.cbrt(b[i]!)));
      expect(distance).toBeGreaterThan(0.2);
    }
  });
});
