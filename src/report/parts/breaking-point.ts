import { breakRange, breakWords, firstBreakWords, stopWords } from '../../core/result/breaking-words.ts';
import { rounded } from '../../core/result/figures.ts';
import { dimensionName } from '../../core/result/names.ts';
import type { BreakingPoints, TakeResult } from '../../core/result/take-result.ts';
import { nearlyScore, shownScore } from '../../core/scoring/score-curve.ts';
import { escapeHtml, outsideText } from '../escape-html.ts';

type Dimension = BreakingPoints['dimensions'][number];

const [barWidth, barStep, barHeight] = [12, 18, 28];

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
  const drawn = scores.map(({ score }, i) => {
    const x = 2 + i * barStep;
    const height = Math.max(3, (score / 100) * barHeight);
    const y = 12 + barHeight - height;
    const middle = x + barWidth / 2;
    const weak = score < nearlyScore;
    const cross = weak ? `<path d="M${middle - 3} ${y - 9}l6 6m0 -6l-6 6" class="cross"/>` : '';
    return `<rect x="${x}" y="${y}" width="${barWidth}" height="${height}" class="${weak ? 'weak' : 'held'}"/>${cross}`;
  });
  const words = scores.map(({ bpm, score }) => `at ${rounded(bpm, 0)}: ${shownScore(score)} of 100`);
  const width = scores.length * barStep + 2;
  return `<svg class="repeats" role="img" aria-label="${escapeHtml(words.join('; '))}" viewBox="0 0 ${width} 42" width="${width}" height="42">${drawn.join('')}</svg>`;
}
