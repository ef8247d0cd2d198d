import { chartList } from '../../charts/chart-list.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { picture, type ReportImages } from './picture.ts';

/** The pictures of a take's strokes and tempo; the scores' own stands with the scores. */
export function pictures(result: TakeResult, images: ReportImages): string {
  const figures = chartList
    .filter(({ id }) => id !== 'score-overview')
    .map((chart) => picture(result, images, chart));
  if (figures.every((figure) => figure === '')) return '';
  return `<section id="pictures"><h2>Pictures</h2><div class="pictures">${figures.join('')}</div></section>`;
}
