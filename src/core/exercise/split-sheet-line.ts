import { type SettingWord, settingWords } from './line-settings.ts';
import { type HeadingWord, headingWords } from './sheet-headings.ts';

/** One piece of a sheet's line, between semicolons: a setting with its word, or bare text. */
export interface SheetPiece {
  /** The word of a setting, in small letters; null for bare text. */
  readonly word: string | null;
  readonly column: number;
  readonly value: string;
  readonly valueColumn: number;
}

interface SplitLine {
  readonly pieces: readonly SheetPiece[];
  /** What is wrong with a quoted value, if anything. */
  readonly fault: null | { readonly code: 'quote-open' | 'text-after-quote'; readonly column: number };
}

const knownWords = new Set<string>([...headingWords, ...Object.keys(settingWords)]);
/** Words whose value is free text. */
const textWords: readonly string[] = ['title', 'for', 'note', 'name'] satisfies (HeadingWord | SettingWord)[];

/** `tempo: 110`, `tempo 110`, `wrod: 110`; the colon may be left out behind a known word. */
function wordAtStart(text: string): { readonly word: string; readonly length: number } | null {
  const found = /^([a-z]{1,30})(\s*:|\s|$)/i.exec(text);
  if (found === null) return null;
  const word = found[1]!.toLowerCase();
  return found[2]!.endsWith(':') || knownWords.has(word) ? { word, length: found[0].length } : null;
}

/**
 * Splits a line at its semicolons and drops the comment: a `#` at the line's start or behind a space, to the end
 * of the line. In a title, a name or a note it needs a space behind it too, so that `Study #3` stays whole. A value in
 * double quotes keeps both signs; two quotes inside stand for one. Columns count characters from 1.
 *
 * @example splitSheetLine('>RLR ; name: "A; B" # why') // '>RLR', and 'A; B' as the name
 */
export function splitSheetLine(line: string): SplitLine {
  const signs = [...line];
  const blank = (at: number) => signs[at] !== undefined && /\s/u.test(signs[at]);
  const comment = (at: number, inText: boolean) =>
    signs[at] === '#' &&
    (at === 0 || blank(at - 1)) &&
    (!inText || at + 1 === signs.length || blank(at + 1) || signs[at + 1] === '#');
  const pieceEnds = (at: number, inText: boolean) =>
    at >= signs.length || signs[at] === ';' || comment(at, inText);
  const pieces: SheetPiece[] = [];
  let at = 0;
  while (true) {
    while (blank(at)) at += 1;
    const column = at + 1;
    const start = wordAtStart(signs.slice(at, at + 64).join(''));
    const inText = start !== null && textWords.includes(start.word);
    if (start !== null) {
      at += start.length;
      while (blank(at)) at += 1;
    }
    const valueColumn = at + 1;
    let value = '';
    if (start !== null && signs[at] === '"') {
      at += 1;
      while (at < signs.length && (signs[at] !== '"' || signs[at + 1] === '"')) {
        if (signs[at] === '"') at += 1;
        value += signs[at];
        at += 1;
      }
      if (at >= signs.length) return { pieces, fault: { code: 'quote-open', column: valueColumn } };
      at += 1;
      while (blank(at)) at += 1;
      if (!pieceEnds(at, inText)) return { pieces, fault: { code: 'text-after-quote', column: at + 1 } };
    } else {
      while (!pieceEnds(at, inText)) {
        value += signs[at];
        at += 1;
      }
    }
    pieces.push({ word: start?.word ?? null, column, value: value.trimEnd(), valueColumn });
    if (signs[at] !== ';') return { pieces, fault: null };
    at += 1;
  }
}
