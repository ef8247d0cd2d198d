import { namedScores } from '../../charts/score-overview.ts';
import { scoreWord } from '../../charts/score-word.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { escapeHtml } from '../escape-html.ts';

/** The scores with their intervals and words; why there are none where there are none. */
export function scores(result: TakeResult): string {
  const named = namedScores(result);
  if (named.length === 0) {
    return `<section id="scores"><h2>Scores</h2><p>This take has no scores: too little of it could be measured.
The figures that could be measured stand below.</p></section>`;
  }
  const rows = named.map(
    ({ name, score }) =>
      `<tr><th scope="row">${escapeHtml(name)}</th><td><strong>${scoreWord(score.word)}</strong></td>` +
      `<td class="number">${Math.round(score.score)}</td>` +
      `<td class="number">${Math.round(score.low)} to ${Math.round(score.high)}</td></tr>`,
  );
  return `<section id="scores"><h2>Scores</h2>
<table><thead><tr><th scope="col">What</th><th scope="col">Word</th><th scope="col" class="number">Score of 100</th>
<th scope="col" class="number">Likely between</th></tr></thead><tbody>${rows.join('')}</tbody></table>
<p class="note">Marked by the rubric “${escapeHtml(result.scores!.rubric)}”. 85 and more is secure, 60 and more is nearly.
The last column says how sure the score is: a longer take narrows it.</p></section>`;
}
