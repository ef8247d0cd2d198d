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
import { type PackedPart, unpackPart } from '../packed-part.ts';
import { type ChosenStroke, chosenStroke } from './chosen-stroke.ts';
import { foldOnNarrow } from './folds.ts';
import { strokeBar } from './stroke-bar.ts';
import { listenToKeys } from './stroke-keys.ts';
import { chooseOnPoint, strokeRings, strokesOf } from './stroke-rings.ts';
import { unpacked } from './unpacked.ts';

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
function drawAll(result: DrawnPart, chosen: ChosenStroke): void {
  const palette = dark.matches ? darkPalette : lightPalette;
  const look = { ...plainLook, palette, fontSize: narrow.matches ? 12 : 14 };
  for (const { id, draw } of chartList) {
    const figure = document.querySelector<HTMLElement>(`figure[data-chart="${id}"]`);
    const canvas = figure?.querySelector('canvas');
    const chart = draw(result, look);
    if (!figure || !canvas || chart === null) continue;
    Chart.getChart(canvas)?.destroy();
    figure.classList.add('drawn');
    const onPoint = chooseOnPoint(chosen);
    const drawn = new Chart(canvas, {
      ...chart,
      options: { ...chart.options, onHover: onPoint, onClick: onPoint },
      plugins: [...(chart.plugins ?? []), strokeRings(chosen, palette)],
    });
    if (canvas.tabIndex < 0 && strokesOf(drawn).length > 0) {
      listenToKeys(canvas, () => strokesOf(Chart.getChart(canvas)!), chosen);
    }
  }
}

foldOnNarrow(narrow);

/** The take's columns as they stand in the report; undefined where there are none, or this browser can't unpack them. */
async function embedded(): Promise<DrawnPart | undefined> {
  const held = document.getElementById('drawn-part');
  if (!held?.textContent) return undefined;
  const json =
    held.dataset.coding === 'gzip'
      ? new TextDecoder().decode(await unpacked(held.textContent))
      : held.textContent;
  return unpackPart(JSON.parse(json) as PackedPart);
}

// The canvas takes the type as it finds it; it has to be there first.
const type = ['400', '700'].map((weight) => document.fonts.load(`${weight} 14px "Atkinson Hyperlegible"`));
void Promise.all([embedded().catch(() => undefined), Promise.allSettled(type)]).then(([result]) => {
  if (result === undefined) return;
  const chosen = chosenStroke();
  const redraw = () => drawAll(result, chosen);
  redraw();
  dark.addEventListener('change', redraw);
  narrow.addEventListener('change', redraw);
  strokeBar(result, chosen);
  chosen.listen(() => {
    for (const canvas of document.querySelectorAll<HTMLCanvasElement>('.drawn canvas'))
      Chart.getChart(canvas)?.draw();
  });
});
