import { chartList } from '../../charts/chart-list.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { nearlyScore, secureScore } from '../../core/scoring/score-curve.ts';
import { escapeHtml } from '../escape-html.ts';
import { picture, type ReportImages } from './picture.ts';

/** The scores as a picture with its table, and how to read them; why there are none where there are none. */
export function scores(result: TakeResult, images: ReportImages): string {
  const { scores: found } = result;
  if (found === null) {
    return `<section id="scores"><h2>Scores</h2><p>This take has no scores: too little of it could be measured.
The figures that could be measured stand below.</p></section>`;
  }
  const chart = chartList.find(({ id }) => id === 'score-overview')!;
  return `<section id="scores"><h2>Scores</h2>
${picture(result, images, chart)}
<p class="note">Marked by the rubric "${escapeHtml(found.rubric)}": from ${secureScore} a score is secure, from
${nearlyScore} nearly there. The thin line is the range in which the score likely lies; a longer take narrows it.</p></section>`;
}
