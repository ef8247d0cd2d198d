import { measures } from '../../core/measures/index.ts';
import { bestWords, unitWords } from '../../core/measures/measure-words.ts';
import { isForExport } from '../../core/result/names.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { escapeHtml } from '../escape-html.ts';
import { fold } from './fold.ts';

/** Whether the report tells how a measure is made. */
export const isExplained = (id: string): boolean => measures.some((measure) => measure.id === id);

/** A link from a figure to how it is made; the title tells links with the same words apart. */
export function howLink(id: string, title: string): string {
  return `<a class="how" href="#how-${id}" aria-label="How it is measured: ${escapeHtml(title)}">How it is measured</a>`;
}

/**
 * How each figure of the report is made and where definition, method and range come from, from the measures' own
 * descriptions. Empty where nothing was measured.
 */
export function howMeasured(result: TakeResult): string {
  const ids = new Set(result.measures.map(({ id }) => id).filter((id) => !isForExport(id)));
  const items = measures
    .filter(({ id }) => ids.has(id))
    .map(
      ({ id, title, describes, unit, better, source }) =>
        `<div id="how-${id}" tabindex="-1"><dt>${escapeHtml(title)}</dt><dd>${escapeHtml(describes)} <span class="note">In ${unitWords[unit]}; ${bestWords[better]}. Source: ${escapeHtml(source)}</span></dd></div>`,
    );
  if (items.length === 0) return '';
  return `<section id="how">${fold('<h2>How each figure is measured</h2>', `<dl class="words">${items.join('')}</dl>`)}</section>`;
}
