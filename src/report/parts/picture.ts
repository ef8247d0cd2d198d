import type { ChartEntry, ChartTable } from '../../charts/chart-entry.ts';
import { plainLook } from '../../charts/look.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { escapeHtml } from '../escape-html.ts';
import { fold } from './fold.ts';

/** Data URIs of the pictures by chart id; a chart without one is drawn by the script alone. */
export type ReportImages = Readonly<Record<string, string>>;

/**
 * One picture under its question: the image that is there without scripts, the canvas that takes its place, the
 * words for both and the figures behind them, folded away or not. With `folds` a narrow screen folds the whole picture
 * away but for its question, unless it comes first. Empty where the take holds nothing to draw.
 */
export function picture(
  result: TakeResult,
  images: ReportImages,
  chart: ChartEntry,
  { unfolded = false, folds }: { readonly unfolded?: boolean; readonly folds?: 'first' | 'later' } = {},
): string {
  const { id, question, draw, text, table, wide = false, printed = false } = chart;
  if (draw(result, plainLook) === null) return '';
  const words = escapeHtml(text(result));
  const image = images[id];
  const still =
    image === undefined
      ? '<noscript><p>This picture is drawn by a script, and scripts are off here. Its figures stand below.</p></noscript>'
      : `<img src="${escapeHtml(image)}" alt="${words}" width="440" height="340">`;
  const classes = [
    'picture',
    ...(wide ? ['wide'] : []),
    ...(printed ? ['printed'] : []),
    ...(image === undefined ? [] : ['with-image']),
  ];
  const title = `<h3>${escapeHtml(question)}</h3>`;
  const drawn = `<div class="sheet">${still}<canvas role="img" aria-label="${words}"></canvas></div>
<div class="beside"><figcaption>${words}</figcaption>
<details${unfolded ? ' open' : ''}><summary>The figures behind this picture</summary>${tableHtml(table(result))}</details></div>`;
  const inside =
    folds === undefined ? `${title}\n${drawn}` : fold(title, drawn, { first: folds === 'first' });
  return `<figure class="${classes.join(' ')}" data-chart="${id}">\n${inside}</figure>`;
}

function tableHtml({ head, rows }: ChartTable): string {
  const cells = head.map((name) => `<th scope="col">${escapeHtml(name)}</th>`);
  const lines = rows.map(([first, ...rest]) => {
    const others = rest.map((cell) => `<td>${escapeHtml(cell)}</td>`);
    return `<tr><th scope="row">${escapeHtml(first ?? '')}</th>${others.join('')}</tr>`;
  });
  return `<div class="scroll" tabindex="0"><table><thead><tr>${cells.join('')}</tr></thead><tbody>${lines.join('')}</tbody></table></div>`;
}
