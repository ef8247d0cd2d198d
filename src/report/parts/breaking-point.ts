import { breakRange, breakWords, firstBreakWords, stopWords } from '../../core/result/breaking-words.ts';
import { rounded } from '../../core/result/figures.ts';
import { dimensionName } from '../../core/result/names.ts';
import type { BreakingPoints, TakeResult } from '../../core/result/take-result.ts';
import { nearlyScore, shownScore } from '../../core/scoring/score-curve.ts';
import { escapeHtml, outsideText } from '../escape-html.ts';
import { scoreBars } from './score-bars.ts';

type Dimension = BreakingPoints['dimensions'][number];

const barStep = 18;

/** At which tempo each dimension of a rising exercise breaks; empty for other sheets. */
export function breakingPoint({ breaking = [], sheet }: TakeResult): string {
  if (breaking.length === 0) return '';
  const parts = breaking.map((one) => {
    const notation = outsideText(sheet.lines[one.lines[0]!]!.notation, 80);
    const name = breaking.length > 1 ? `<h3 class="letters">${notation}</h3>` : '';
    return `${name}<p>${escapeHtml(firstBreakWords(one))} ${escapeHtml(stopWords(one))}</p>${table(one)}`;
  });
  return `<section id="breaking-point"><h2>Breaking point</h2>
${parts.join('')}
<p class="note">One bar a tempo, the slowest first: the taller, the better it scored. Where it was not there yet, the bar is hollow with a cross over it. A player's own limit moves from day to day; one take shows one day.</p></section>`;
}

function table({ dimensions }: BreakingPoints): string {
  if (dimensions.length === 0) return '';
  const rows = dimensions.map(
    (one) =>
      `<tr><th scope="row">${escapeHtml(dimensionName(one.id))}</th><td>${bars(one)}</td><td>${escapeHtml(breakWords(one))}</td><td>${escapeHtml(breakRange(one))}</td></tr>`,
  );
  return `<div class="scroll" tabindex="0" role="region" aria-label="Breaking point"><table>
<thead><tr><th scope="col">What</th><th scope="col">Tempo by tempo</th><th scope="col">Where it breaks, BPM</th><th scope="col">Range (95 %)</th></tr></thead>
<tbody>${rows.join('')}</tbody></table></div>`;
}

function bars({ scores }: Dimension): string {
  const shown = scores.map(({ bpm, score }) => ({
    score,
    weak: score < nearlyScore,
    words: `at ${rounded(bpm, 0)}: ${shownScore(score)} of 100`,
  }));
  return scoreBars(shown, barStep);
}
