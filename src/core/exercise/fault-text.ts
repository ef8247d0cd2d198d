import type { TextFault } from './fault.ts';
import { faultSentences } from './fault-sentences.ts';
import type { SheetFaultCode } from './parse-sheet.ts';

/** Characters of a line shown at most; fits a terminal and a phone held sideways. */
const shownWidth = 72;

/** A text's control and formatting characters can move the cursor or turn the reading direction round. */
const harmless = (text: string) => text.replace(/\s/gu, ' ').replace(/\p{C}/gu, '�');

/**
 * Shows a fault to the person who wrote the text: where it is, one sentence, the line, and a caret under the place.
 * Of a long line the part around the place is shown, of an empty one nothing.
 *
 * @example
 * faultText('>RLR RXR', fault)
 * // Character 7: "X" means nothing here. …
 * //   >RLR RXR
 * //         ^
 */
export function faultText(text: string, fault: TextFault<SheetFaultCode>): string {
  const lines = text.split('\n');
  const signs = [...(lines[fault.line - 1] ?? '')];
  const at = Math.min(fault.column - 1, signs.length);
  const from = Math.max(0, Math.min(at - shownWidth / 2, signs.length - shownWidth));
  const before = from > 0 ? '…' : '';
  const after = from + shownWidth < signs.length ? '…' : '';
  const shown = harmless(signs.slice(from, from + shownWidth).join(''));
  const place =
    lines.length > 1 ? `Line ${fault.line}, character ${fault.column}` : `Character ${fault.column}`;
  const sentence = harmless(faultSentences[fault.code](fault.facts));
  if (shown.trim() === '') return `${place}: ${sentence}`;
  return `${place}: ${sentence}\n  ${before}${shown}${after}\n  ${' '.repeat(before.length + at - from)}^`;
}
