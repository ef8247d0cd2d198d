import { Chart } from 'chart.js';
import { type WeekPicture, weekChart } from '../../charts/weeks/week-picture.ts';
import { hearPair } from './hear-pair.ts';
import { printWhenAsked } from './print-when-asked.ts';
import { drawForScreen, figureCanvas, registerCharts, screenLook, typeLoaded } from './screen-charts.ts';

registerCharts();

/** Draws every picture over its image, in the colours of the screen. */
function drawAll(pictures: readonly WeekPicture[]): void {
  const look = screenLook();
  for (const data of pictures) {
    const canvas = figureCanvas(`figure[data-week="${CSS.escape(data.id)}"]`);
    if (canvas !== null) new Chart(canvas, weekChart(data, look));
  }
}

hearPair();
printWhenAsked();
const held = document.getElementById('week-pictures')?.textContent;
if (held) {
  const pictures = JSON.parse(held) as WeekPicture[];
  void typeLoaded().then(() => drawForScreen(() => drawAll(pictures)));
}
