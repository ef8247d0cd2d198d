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
import { plainLook } from '../../charts/look.ts';
import { darkPalette, lightPalette } from '../../charts/palette.ts';
import { type WeekPicture, weekChart } from '../../charts/weeks/week-picture.ts';
import { hearPair } from './hear-pair.ts';
import { printWhenAsked } from './print-when-asked.ts';

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

const narrow = matchMedia('(max-width: 40rem)');
const dark = matchMedia('(prefers-color-scheme: dark)');

/** Draws every picture over its image, in the colours of the screen. */
function drawAll(pictures: readonly WeekPicture[]): void {
  const palette = dark.matches ? darkPalette : lightPalette;
  const look = { ...plainLook, palette, fontSize: narrow.matches ? 12 : 14 };
  for (const data of pictures) {
    const figure = document.querySelector<HTMLElement>(`figure[data-week="${CSS.escape(data.id)}"]`);
    const canvas = figure?.querySelector('canvas');
    if (!figure || !canvas) continue;
    Chart.getChart(canvas)?.destroy();
    figure.classList.add('drawn');
    new Chart(canvas, weekChart(data, look));
  }
}

hearPair();
printWhenAsked();
const held = document.getElementById('week-pictures')?.textContent;
if (held) {
  const pictures = JSON.parse(held) as WeekPicture[];
  const type = ['400', '700'].map((weight) => document.fonts.load(`${weight} 14px "Atkinson Hyperlegible"`));
  void Promise.allSettled(type).then(() => {
    const redraw = () => drawAll(pictures);
    redraw();
    dark.addEventListener('change', redraw);
    narrow.addEventListener('change', redraw);
  });
}
