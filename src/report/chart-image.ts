import { createRequire } from 'node:module';
import type { ChartConfiguration, Plugin } from 'chart.js';
import { indexedPng } from './indexed-png.ts';

/** Pictures can't be drawn here: the drawing library is missing or could not be loaded. */
export class PicturesUnavailable extends Error {
  readonly code = 'pictures-unavailable';
  constructor(cause: unknown) {
    const fault = cause instanceof Error ? cause.message.split('\n')[0] : String(cause);
    super(
      `Pictures can't be drawn because the package @napi-rs/canvas did not load (${fault}). ` +
        'Run `npm install` again with optional packages on. Grading works without it.',
      { cause },
    );
    this.name = 'PicturesUnavailable';
  }
}

/** Name under which the report's type is known to the canvas. */
export const imageFontFamily = 'Evenhand Report';

interface ImageSize {
  /** CSS pixels. */
  readonly width: number;
  readonly height: number;
  /** Image pixels per CSS pixel. */
  readonly density: number;
  /** Colour behind the picture. */
  readonly paper: string;
  /** Colours that the file keeps, at most 256; all of a chart's when left out. */
  readonly colours?: number;
}

/** Turns one chart configuration into the bytes of a PNG. */
type DrawImage = (chart: ChartConfiguration, size: ImageSize) => Uint8Array;

/** Name of the package that the built program draws with. */
declare const canvasInProgram: string | undefined;

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
  const library = await import('chartjs-node-canvas');
  // A bundled CommonJS module has nothing but a default.
  const { ChartJSNodeCanvas } = 'default' in library ? (library.default as typeof library) : library;
  const require = createRequire(import.meta.url);
  // The built program holds the drawing library and draws with this canvas; from the source it brings its own.
  const canvas =
    typeof canvasInProgram === 'string'
      ? require(canvasInProgram)
      : createRequire(require.resolve('chartjs-node-canvas'))('canvas');
  registerType(canvas, require.resolve);
  return (chart, { width, height, density, paper, colours }) => {
    const canvas = new ChartJSNodeCanvas({ width, height, backgroundColour: paper });
    const options = { ...chart.options, devicePixelRatio: density };
    let rgba = new Uint8Array(0);
    const keepPixels: Plugin = {
      id: 'keep-pixels',
      afterRender: ({ ctx }) => {
        rgba = Uint8Array.from(ctx.getImageData(0, 0, width * density, height * density).data);
      },
    };
    const plugins = [...(chart.plugins ?? []), keepPixels];
    canvas.renderToBufferSync({ ...chart, options, plugins } as ChartConfiguration);
    return indexedPng({ width: width * density, height: height * density, rgba }, colours);
  };
}

interface CanvasPackage {
  readonly GlobalFonts: { registerFromPath(path: string, family: string): unknown };
}

/** Makes the type known before the first drawing: the canvas keeps the first match of a family for good. */
function registerType({ GlobalFonts }: CanvasPackage, resolve: (id: string) => string): void {
  for (const weight of [400, 700]) {
    const file = `@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-${weight}-normal.woff`;
    if (!GlobalFonts.registerFromPath(resolve(file), imageFontFamily)) throw new Error(`cannot read ${file}`);
  }
}
