import { dimensionName, isForExport } from '../../core/result/names.ts';
import { sentence } from '../../core/result/sentences.ts';
import type { MeasureResult, TakeResult } from '../../core/result/take-result.ts';
import { escapeHtml } from '../escape-html.ts';
import { formatFigure, formatRange, scopeWords } from '../format-figure.ts';
import { measureWords } from '../measure-words.ts';
import { isShownInReport } from '../shown-parts.ts';
import { fold } from './fold.ts';
import { howLink, isExplained } from './how-measured.ts';

/** Every measure with its interval, strokes and meaning, under the dimension it counts for. */
export function figures(result: TakeResult): string {
  if (result.measures.length === 0) return '';
  const groups = grouped(result);
  const bodies = groups.map(({ title, ids }) => {
    const rows = ids.flatMap((id) =>
      measureRows(result.measures.filter((measure) => measure.id === id && isShownInReport(measure))),
    );
    const heading = `<tr class="group"><th colspan="4" scope="colgroup">${escapeHtml(title)}</th></tr>`;
    return `<tbody>${groups.length > 1 ? heading : ''}${rows.join('')}</tbody>`;
  });
  const inside = `<p class="note">Each row gives the value, the range it likely lies in, and the strokes it rests on. "Likely between" is a range made so that it holds the true figure in about 95 of 100 such takes.</p>
<table class="figures"><thead><tr><th scope="col">What</th><th scope="col" class="number">Value</th>
<th scope="col" class="number">Likely between</th><th scope="col" class="number">Strokes</th></tr></thead>${bodies.join('')}</table>`;
  return `<section id="figures">${fold('<h2>All figures</h2>', inside)}</section>`;
}

/** Ids of measures by the dimension that scores them; what no dimension scores comes last. */
function grouped({ measures, scores }: TakeResult): { title: string; ids: string[] }[] {
  const shown = measures.filter((measure) => isShownInReport(measure) && !isForExport(measure.id));
  const present = [...new Set(shown.map(({ id }) => id))];
  const taken = new Set<string>();
  const groups = (scores?.dimensions ?? []).map((dimension) => {
    const ids = present.filter((id) => !taken.has(id) && dimension.measures.some((m) => m.id === id));
    for (const id of ids) taken.add(id);
    return { title: dimensionName(dimension.id), ids };
  });
  const rest = { title: 'Not scored, for reading', ids: present.filter((id) => !taken.has(id)) };
  return [...groups, rest].filter((group) => group.ids.length > 0);
}

function measureRows(results: readonly MeasureResult[]): string[] {
  const { title, describes } = measureWords(results[0]!.id);
  const whole = results.length === 1 && scopeWords(results[0]!.scope) === 'whole take';
  const about = describes === '' ? '' : `<span class="about">${escapeHtml(describes)}</span>`;
  const how = isExplained(results[0]!.id) ? howLink(results[0]!.id, title) : '';
  const name = `<span class="name">${escapeHtml(title)}</span>${about}${how}`;
  if (whole) return [`<tr><th scope="row">${name}</th>${cells(results[0]!)}</tr>`];
  return [
    `<tr class="parent"><th scope="row" colspan="4">${name}</th></tr>`,
    ...results.map(
      (result) =>
        `<tr class="part"><th scope="row">${escapeHtml(scopeWords(result.scope))}</th>${cells(result)}</tr>`,
    ),
  ];
}

function cells({ outcome, unit }: MeasureResult): string {
  if (outcome.state !== 'measured') {
    const state = outcome.state === 'not-applicable' ? 'Does not apply' : 'Not measurable';
    return `<td colspan="3" class="reason">${state}: ${escapeHtml(sentence(outcome.reason))}</td>`;
  }
  const { value, low, high, strokes } = outcome;
  return (
    `<td class="number" data-name="value">${escapeHtml(formatFigure(value, unit))}</td>` +
    `<td class="number" data-name="range">${escapeHtml(formatRange(low, high, unit))}</td>` +
    `<td class="number" data-name="strokes">${strokes}</td>`
  );
}
