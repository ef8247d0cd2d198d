import { plainLook } from '../../charts/look.ts';
import { type WeekPicture, weekChart, weekTable, weekText } from '../../charts/weeks/week-picture.ts';
import { imageFontFamily, loadChartImage } from '../chart-image.ts';
import { embedJson } from '../embed-json.ts';
import { escapeHtml } from '../escape-html.ts';

const size = { width: 440, height: 340 };

/** Still pictures by id, as data URIs. Throws `PicturesUnavailable`. */
export async function weekImages(
  pictures: readonly WeekPicture[],
): Promise<Readonly<Record<string, string>>> {
  const drawImage = await loadChartImage();
  const look = { ...plainLook, fontFamily: imageFontFamily, fontSize: 14 };
  return Object.fromEntries(
    pictures.map((data) => {
      const png = drawImage(weekChart(data, look), {
        ...size,
        density: 1.5,
        colours: 32,
        paper: look.palette.paper,
      });
      return [data.id, `data:image/png;base64,${Buffer.from(png).toString('base64')}`];
    }),
  );
}

/** One picture under its question, with the still image that is there without scripts, its words and its figures. */
export function weekPicture(data: WeekPicture, images: Readonly<Record<string, string>>): string {
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
<details><summary>The figures behind this picture</summary><div class="scroll" tabindex="0" role="region" aria-label="Figures of: ${escapeHtml(data.question)}"><table><thead><tr>${cells}</tr></thead><tbody>${lines.join('')}</tbody></table></div></details>
</figure>`;
}

/** The pictures' data for the script. */
export const weekData = (pictures: readonly WeekPicture[]): string =>
  `<script type="application/json" id="week-pictures">${embedJson(pictures)}</script>\n`;
