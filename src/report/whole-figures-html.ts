import { wholeFigures } from '../core/result/whole-figures.ts';

/** Scripts, styles and code with all that is in them, and tags: everything that is no text to be read. */
const textOrNot = /(<(script|style|pre|code)\b[\s\S]*?<\/\2>|<[^>]*>)|([^<]+)/g;

/**
 * HTML in which no line breaks between a figure and its unit. Attributes, scripts, styles and code stay as they are.
 *
 * @example wholeFiguresHtml('<p title="5 ms">5 ms</p>') // the second space doesn't break, the first is left
 */
export const wholeFiguresHtml = (html: string): string =>
  html.replace(
    textOrNot,
    (_, notText?: string, _name?: string, text?: string) => notText ?? wholeFigures(text!),
  );
