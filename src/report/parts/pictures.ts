import { chartList } from '../../charts/chart-list.ts';
import { plainLook } from '../../charts/look.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { escapeHtml } from '../escape-html.ts';
import { picturesFirst } from '../pictures-first.ts';
import { picture, type ReportImages } from './picture.ts';

/**
 * The pictures of a take's strokes and tempo, and the questions that it leaves open; the scores' own stands with the
 * scores.
 */
export function pictures(result: TakeResult, images: ReportImages): string {
  const charts = chartList.filter(({ id }) => id !== 'score-overview');
  const first = picturesFirst(result);
  const figures = charts
    .map((chart) => picture(result, images, chart, { folds: first.has(chart.id) ? 'first' : 'later' }))
    .filter((figure) => figure !== '');
  const open = charts.filter(({ draw }) => draw(result, plainLook) === null);
  if (figures.length === 0) return '';
  return `<section id="pictures"><h2>Pictures</h2>
<p class="note">Triangles are accents, circles taps; ${handMarks(result)}.</p>
<p class="note" id="stroke-hint" hidden>Point at a stroke, tap it, or use the arrow keys on a picture: it is marked in every picture.</p>
<div class="pictures">${figures.join('')}</div>${unanswered(open)}</section>`;
}

/** What full and hollow marks stand for. */
const handMarks = ({ hands }: TakeResult): string =>
  hands === 'not-told'
    ? "hands can't be told in this take, so all marks are full"
    : 'full marks are the right hand, hollow ones the left';

function unanswered(charts: readonly { readonly question: string; readonly needs: string }[]): string {
  if (charts.length === 0) return '';
  const items = charts.map(
    ({ question, needs }) =>
      `<li>${escapeHtml(question)} <span class="note">Needed: ${escapeHtml(needs)}.</span></li>`,
  );
  return `<div class="open-questions"><h3>Questions that this take leaves open</h3><ul>${items.join('')}</ul></div>`;
}
