import { modelPlaceName, standingWords } from '../../core/result/model-words.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { escapeHtml, outsideText } from '../escape-html.ts';
import { formatFigure, formatRange } from '../format-figure.ts';

type Difference = NonNullable<TakeResult['model']>['measures'][number];

const titles = {
  'model-placement': 'Place in the beat',
  'model-level': 'Level above the middle tap',
} as const;

const isKnown = (id: string): id is keyof typeof titles => Object.hasOwn(titles, id);

/** The take against a played model, partial by partial, with words for where each lies; empty without a model. */
export function model({ model: played, sheet }: TakeResult): string {
  if (!played) return '';
  const several = sheet.lines.length > 1;
  const rows = played.measures.flatMap((one) => (isKnown(one.id) ? [row(one, one.id, several)] : []));
  const alike = played.measures.filter(({ standing }) => standing === 'alike').length;
  const left =
    played.linesLeftOut === 0
      ? ''
      : `<p class="note">${played.linesLeftOut} ${played.linesLeftOut === 1 ? "line of the sheet isn't" : "lines of the sheet aren't"} in the model and left out here.</p>`;
  return `<section id="model"><h2>Against the model</h2>
<p>Held against ${outsideText(played.name)}: ${alike} of ${played.measures.length} figures are like the model's.</p>
<div class="scroll" tabindex="0" role="region" aria-label="Against the model"><table><thead><tr><th scope="col">Stroke</th><th scope="col">What</th>
<th scope="col" class="number">Difference</th><th scope="col" class="number">Likely between</th><th scope="col">In words</th></tr></thead>
<tbody>${rows.join('')}</tbody></table></div>${left}
<p class="note">Plus is later or louder than the model. Where it can't be told yet, more repeats in one take, of either, would tell.</p></section>`;
}

function row(one: Difference, id: keyof typeof titles, several: boolean): string {
  const { outcome, unit } = one;
  const head = `<th scope="row">${modelPlaceName(one, several)}</th><td>${titles[id]}</td>`;
  if (outcome.state !== 'measured') {
    const why = outcome.state === 'not-applicable' ? "doesn't apply here" : "couldn't be measured";
    return `<tr>${head}<td class="number">–</td><td class="number">–</td><td>${why}</td></tr>`;
  }
  const value = escapeHtml(formatFigure(outcome.value, unit));
  const range = escapeHtml(formatRange(outcome.low, outcome.high, unit));
  return `<tr>${head}<td class="number">${value}</td><td class="number">${range}</td><td>${standingWords(one)}</td></tr>`;
}
