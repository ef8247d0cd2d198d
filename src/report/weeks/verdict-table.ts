import type { JudgedChange } from '../../core/progress/change-verdicts.ts';
import { comparedFigures } from '../../core/progress/compared-figures.ts';
import { changeText, figureText, stillNeeded, verdictWords } from '../../core/progress/progress-words.ts';
import { measureName } from '../../core/result/names.ts';
import { escapeHtml } from '../escape-html.ts';

const marks = { clearer: '▲', worse: '▼', higher: '↑', lower: '↓' } as const;

/** Figures of two stretches of days with their change, its interval and the verdict; and what is still needed. */
export function verdictTable(
  changes: readonly JudgedChange[],
  [before, after]: readonly [string, string],
): string {
  const shown = changes.filter(({ typical }) => typical[0] !== null || typical[1] !== null);
  const rows = shown.map((one) => {
    const figure = comparedFigures.find(({ id }) => id === one.figure)!;
    const [a, b] = one.typical.map((value) => (value === null ? '–' : figureText(value, figure)));
    const { change, verdict } = one;
    const range =
      change === null
        ? ''
        : `${changeText(change.value, figure)} (${changeText(change.low, figure)} to ${changeText(change.high, figure)})`;
    const mark = verdict in marks ? `${marks[verdict as keyof typeof marks]} ` : '';
    return `<tr><th scope="row">${escapeHtml(measureName(one.figure))}</th><td data-name="${before}">${a}</td><td data-name="${after}">${b}</td>
<td data-name="change">${range}</td><td class="word" data-name="verdict">${mark}${verdictWords[verdict]}</td></tr>`;
  });
  const needed = new Map<string, string[]>();
  for (const one of shown) {
    const text = stillNeeded(one);
    if (text !== '') needed.set(text, [...(needed.get(text) ?? []), measureName(one.figure)]);
  }
  const items = [...needed].map(
    ([text, names]) =>
      `<li>${names.length === shown.length ? '' : `${escapeHtml(names.join(', '))}: `}${escapeHtml(text)}</li>`,
  );
  return `<table class="stack"><thead><tr><th scope="col">Figure</th><th scope="col">${before}</th><th scope="col">${after}</th>
<th scope="col">Change (95 % interval)</th><th scope="col">Verdict</th></tr></thead><tbody>${rows.join('')}</tbody></table>
${items.length === 0 ? '' : `<p>What would tell more:</p><ul>${items.join('')}</ul>`}
<p class="note">Days are compared, not takes. All figures of this table together claim a change that isn't there in fewer than one comparison of twenty.</p>`;
}
