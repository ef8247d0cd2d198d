import { chartList } from '../../charts/chart-list.ts';
import type { ChartTable } from '../../charts/chart-table.ts';
import { plainLook } from '../../charts/look.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { escapeHtml } from '../escape-html.ts';

/** Data URIs of the pictures by chart id; a chart without one is drawn by the script alone. */
export type ReportImages = Readonly<Record<string, string>>;

/** The pictures of a take, each under its question, with its words and its figures behind it. */
export function pictures(result: TakeResult, images: ReportImages): string {
  const figures = chartList.flatMap(({ id, question, draw, text, table }) => {
    if (draw(result, plainLook) === null) return [];
    const words = escapeHtml(text(result));
    const image = images[id];
    const still =
      image === undefined
        ? '<noscript><p>This picture is drawn by a script, and scripts are off here. Its figures stand below.</p></noscript>'
        : `<img src="${escapeHtml(image)}" alt="${words}" width="520" height="380">`;
    return [
      `<figure class="picture${image === undefined ? '' : ' with-image'}" data-chart="${id}">
<h3>${escapeHtml(question)}</h3>
<div class="sheet">${still}<canvas role="img" aria-label="${words}"></canvas></div>
<figcaption>${words}</figcaption>
<details><summary>The figures behind this picture</summary>${tableHtml(table(result))}</details></figure>`,
    ];
  });
  if (figures.length === 0) return '';
  return `<section id="pictures"><h2>Pictures</h2><div class="pictures">${figures.join('')}</div></section>`;
}

function tableHtml({ head, rows }: ChartTable): string {
  const cells = head.map((name) => `<th scope="col">${escapeHtml(name)}</th>`);
  const lines = rows.map(([first, ...rest]) => {
    const others = rest.map((cell) => `<td>${escapeHtml(cell)}</td>`);
    return `<tr><th scope="row">${escapeHtml(first ?? '')}</th>${others.join('')}</tr>`;
  });
  return `<div class="scroll" tabindex="0"><table><thead><tr>${cells.join('')}</tr></thead><tbody>${lines.join('')}</tbody></table></div>`;
}
