import { Chart, Filler } from 'chart.js';
import { chartList } from '../../charts/chart-list.ts';
import type { DrawnPart } from '../drawn-part.ts';
import { type PackedPart, unpackPart } from '../packed-part.ts';
import { type ChosenStroke, chosenStroke } from './chosen-stroke.ts';
import { foldOnNarrow } from './folds.ts';
import {
  drawForScreen,
  figureCanvas,
  narrow,
  registerCharts,
  screenLook,
  typeLoaded,
} from './screen-charts.ts';
import { strokeBar } from './stroke-bar.ts';
import { listenToKeys } from './stroke-keys.ts';
import { chooseOnPoint, strokeRings, strokesOf } from './stroke-rings.ts';
import { unpacked } from './unpacked.ts';

registerCharts();
Chart.register(Filler);

/** Draws every picture over its image, in the colours of the screen. A picture that fails keeps its image. */
function drawAll(result: DrawnPart, chosen: ChosenStroke): void {
  const look = screenLook();
  for (const { id, draw } of chartList) {
    const chart = draw(result, look);
    const canvas = chart && figureCanvas(`figure[data-chart="${id}"]`);
    if (chart === null || canvas === null) continue;
    const onPoint = chooseOnPoint(chosen);
    const drawn = new Chart(canvas, {
      ...chart,
      options: { ...chart.options, onHover: onPoint, onClick: onPoint },
      plugins: [...(chart.plugins ?? []), strokeRings(chosen, look.palette)],
    });
    if (canvas.tabIndex < 0 && strokesOf(drawn).length > 0) {
      listenToKeys(canvas, () => strokesOf(Chart.getChart(canvas)!), chosen);
    }
  }
}

foldOnNarrow(narrow);

/**
 * The take's columns as they stand in the report; undefined where there are none, or this browser can't unpack them.
 */
async function embedded(): Promise<DrawnPart | undefined> {
  const held = document.getElementById('drawn-part');
  if (!held?.textContent) return undefined;
  const json =
    held.dataset.coding === 'gzip'
      ? new TextDecoder().decode(await unpacked(held.textContent))
      : held.textContent;
  return unpackPart(JSON.parse(json) as PackedPart);
}

void Promise.all([embedded().catch(() => undefined), typeLoaded()]).then(([result]) => {
  if (result === undefined) return;
  const chosen = chosenStroke();
  drawForScreen(() => drawAll(result, chosen));
  strokeBar(result, chosen);
  chosen.listen(() => {
    for (const canvas of document.querySelectorAll<HTMLCanvasElement>('.drawn canvas'))
      Chart.getChart(canvas)?.draw();
  });
});
