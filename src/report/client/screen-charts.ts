import {
  BarController,
  BarElement,
  CategoryScale,
  Chart,
  Legend,
  LinearScale,
  LineElement,
  PointElement,
  ScatterController,
  Title,
  Tooltip,
} from 'chart.js';
import { type Look, plainLook } from '../../charts/look.ts';
import { darkPalette, lightPalette } from '../../charts/palette.ts';

/** What the pictures of every page are made of. */
export function registerCharts(): void {
  Chart.register(
    BarController,
    BarElement,
    CategoryScale,
    Legend,
    LinearScale,
    LineElement,
    PointElement,
    ScatterController,
    Title,
    Tooltip,
  );
}

export const narrow = matchMedia('(max-width: 40rem)');
const dark = matchMedia('(prefers-color-scheme: dark)');
let onPaper = false;

/** The screen's colours and size of letters, as they are now; paper is light, whatever the screen is. */
export const screenLook = (): Look => ({
  ...plainLook,
  palette: dark.matches && !onPaper ? darkPalette : lightPalette,
  fontSize: narrow.matches ? 12 : 14,
});

/** The figure's canvas, shown in the place of its image; null where the page has no such figure. */
export function figureCanvas(selector: string): HTMLCanvasElement | null {
  const figure = document.querySelector<HTMLElement>(selector);
  const canvas = figure?.querySelector('canvas');
  if (!figure || !canvas) return null;
  Chart.getChart(canvas)?.destroy();
  figure.classList.add('drawn');
  return canvas;
}

/** Settled once the type is there: a canvas takes it as it finds it. */
export const typeLoaded = (): Promise<unknown> =>
  Promise.allSettled(
    ['400', '700'].map((weight) => document.fonts.load(`${weight} 14px "Atkinson Hyperlegible"`)),
  );

/** Draws now, and whenever the screen's colours or its width change, and for paper while the page is printed. */
export function drawForScreen(draw: () => void): void {
  draw();
  for (const [event, printed] of [
    ['beforeprint', true],
    ['afterprint', false],
  ] as const)
    addEventListener(event, () => {
      onPaper = printed;
      if (dark.matches) draw();
    });
  dark.addEventListener('change', draw);
  narrow.addEventListener('change', draw);
}
