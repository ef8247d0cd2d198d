import { type WeekPicture, weekTable, weekText } from '../../charts/weeks/week-picture.ts';
import { embedJson } from '../embed-json.ts';
import { escapeHtml } from '../escape-html.ts';

/**
 * One picture under its question, with the still image that is there without scripts, its words and its figures. `of`
 * tells pictures with the same question apart for those who hear the page; untrusted.
 */
export function weekPicture(data: WeekPicture, images: Readonly<Record<string, string>>, of = ''): string {
  const words = escapeHtml(weekText(data));
  const { head, rows } = weekTable(data);
  const image = images[data.id];
  const still =
    image === undefined
      ? '<noscript><p>This picture is drawn by a script, and scripts are off here. Its figures stand below.</p></noscript>'
      : `<img src="${image}" alt="${words}" width="440" height="340">`;
  const cells = head.map((name) => `<th scope="col">${escapeHtml(name)}</th>`).join('');
  const lines = rows.map(
    ([first, ...rest]) =>
      `<tr><th scope="row">${escapeHtml(first ?? '')}</th>${rest.map((cell) => `<td>${escapeHtml(cell)}</td>`).join('')}</tr>`,
  );
  return `<figure class="picture printed${image === undefined ? '' : ' with-image'}" data-week="${escapeHtml(data.id)}">
<h3>${escapeHtml(data.question)}</h3>
<div class="sheet">${still}<canvas role="img" aria-label="${words}"></canvas></div>
<figcaption>${words}</figcaption>
<details><summary>The figures behind this picture</summary><div class="scroll" tabindex="0" role="region" aria-label="Figures of: ${escapeHtml(of === '' ? data.question : `${data.question} ${of.slice(0, 80)}`)}"><table><thead><tr>${cells}</tr></thead><tbody>${lines.join('')}</tbody></table></div></details>
</figure>`;
}

/** The pictures' data for the script. */
export const weekData = (pictures: readonly WeekPicture[]): string =>
  `<script type="application/json" id="week-pictures">${embedJson(pictures)}</script>\n`;
