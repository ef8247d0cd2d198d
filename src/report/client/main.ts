import {
  BarController,
  BarElement,
  CategoryScale,
  Chart,
  Filler,
  Legend,
  LinearScale,
  LineElement,
  PointElement,
  ScatterController,
  Title,
  Tooltip,
} from 'chart.js';
import { chartList } from '../../charts/chart-list.ts';
import { plainLook } from '../../charts/look.ts';
import { darkPalette, lightPalette } from '../../charts/palette.ts';
import type { DrawnPart } from '../drawn-part.ts';

Chart.register(
  BarController,
  BarElement,
  CategoryScale,
  Filler,
  Legend,
  LinearScale,
  LineElement,
  PointElement,
  ScatterController,
  Title,
  Tooltip,
);

const narrow = matchMedia('(max-width: 40rem)');
const dark = matchMedia('(prefers-color-scheme: dark)');

/** Draws every picture over its image, in the colours of the screen. A picture that fails keeps its image. */
function drawAll(result: DrawnPart): void {
  const palette = dark.matches ? darkPalette : lightPalette;
  const look = { ...plainLook, palette, fontSize: narrow.matches ? 12 : 14 };
  for (const { id, draw } of chartList) {
    const figure = document.querySelector<HTMLElement>(`figure[data-chart="${id}"]`);
    const canvas = figure?.querySelector('canvas');
    const chart = draw(result, look);
    if (!figure || !canvas || chart === null) continue;
    Chart.getChart(canvas)?.destroy();
    figure.classList.add('drawn');
    new Chart(canvas, chart);
  }
}

const data = document.getElementById('drawn-part')?.textContent;
if (data) {
  const result = JSON.parse(data) as DrawnPart;
  const redraw = () => drawAll(result);
  // The canvas takes the type as it finds it; it has to be there first.
  const type = ['400', '700'].map((weight) => document.fonts.load(`${weight} 14px "Atkinson Hyperlegible"`));
  void Promise.allSettled(type).then(redraw);
  dark.addEventListener('change', redraw);
  narrow.addEventListener('change', redraw);
}
