import { createRequire } from 'node:module';
import type { ChartConfiguration } from 'chart.js';

/** Pictures can't be drawn here: the drawing library is missing or could not be loaded. */
export class PicturesUnavailable extends Error {
  readonly code = 'pictures-unavailable';
  constructor(cause: unknown) {
    const fault = cause instanceof Error ? cause.message.split('\n')[0] : String(cause);
    super(
      `Pictures can't be drawn because the package chartjs-node-canvas or its canvas did not load (${fault}). ` +
        'Run `npm install` again with optional packages on. Grading works without it.',
      { cause },
    );
    this.name = 'PicturesUnavailable';
  }
}

/** Name under which the report's type is known to the canvas. */
export const imageFontFamily = 'Evenhand Report';

export interface ImageSize {
  /** CSS pixels. */
  readonly width: number;
  readonly height: number;
  /** Image pixels per CSS pixel. */
  readonly density: number;
  /** Colour behind the picture. */
  readonly paper: string;
}

/** Turns one chart configuration into the bytes of a PNG. */
export type DrawImage = (chart: ChartConfiguration, size: ImageSize) => Uint8Array;

let loaded: Promise<DrawImage> | undefined;

/**
 * Loads the drawing library and the report's type once, and gives the function that draws.
 * Throws `PicturesUnavailable` where the native module is missing.
 */
export function loadChartImage(): Promise<DrawImage> {
  loaded ??= load().catch((cause) => {
    loaded = undefined;
    throw new PicturesUnavailable(cause);
  });
  return loaded;
}

async function load(): Promise<DrawImage> {
  const { ChartJSNodeCanvas } = await import('chartjs-node-canvas');
  const { resolve } = createRequire(import.meta.url);
  // Both weights stand before the first drawing: the canvas keeps the first match of a family for good.
  const fonts = [400, 700].map((weight) =>
    resolve(`@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-${weight}-normal.woff`),
  );
  let registered = false;
  return (chart, { width, height, density, paper }) => {
    const canvas = new ChartJSNodeCanvas({ width, height, backgroundColour: paper });
    if (!registered) {
      for (const path of fonts) canvas.registerFont(path, { family: imageFontFamily });
      registered = true;
    }
    const options = { ...chart.options, devicePixelRatio: density };
    return canvas.renderToBufferSync({ ...chart, options } as ChartConfiguration, 'image/png');
  };
}
