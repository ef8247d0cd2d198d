import type { TakeResult } from '../core/result/take-result.ts';
import { escapeHtml } from './escape-html.ts';
import { beatPictures } from './parts/notation.ts';

/** Lines of a sheet that the picture holds, and beats in one row of it. */
const linesDrawn = 24;
const beatsInRow = 8;

const margin = 24;
const rowHeight = 100;
const labelHeight = 28;

const style =
  'text{font-family:sans-serif;font-size:13px;text-anchor:middle}.label{font-size:16px;font-weight:700;text-anchor:start}' +
  '.staff,.stem,.bar{stroke:#000;fill:none;stroke-width:1.2}.beam{stroke:#000;stroke-width:4;fill:none}' +
  '.accent{stroke:#000;stroke-width:2.2;fill:none}.rest{stroke:#555;stroke-width:1.8;fill:none}' +
  '.count{font-size:11px;font-style:italic}.hand.strong{font-weight:700}.grace,.buzz{font-size:11px}';

/**
 * The lines of a sheet in notation as one SVG file that stands by itself, black on white. Null where the result holds
 * no slots. Texts from outside are escaped and cut to 80 characters.
 *
 * @example notationPicture(result) // '<svg xmlns="http://www.w3.org/2000/svg" …'
 */
export function notationPicture(result: TakeResult): string | null {
  let y = margin;
  let widest = 0;
  const parts: string[] = [];
  for (const [index, line] of result.sheet.lines.slice(0, linesDrawn).entries()) {
    const beats = beatPictures(result, index);
    if (beats.length === 0) continue;
    const label = escapeHtml([...line.label].slice(0, 80).join(''));
    parts.push(`<text x="${margin}" y="${y + 16}" class="label">${label}</text>`);
    y += labelHeight;
    for (let from = 0; from < beats.length; from += beatsInRow) {
      let x = margin;
      for (const { width, signs } of beats.slice(from, from + beatsInRow)) {
        parts.push(`<g transform="translate(${x} ${y})">${signs}</g>`);
        x += width;
      }
      widest = Math.max(widest, x);
      y += rowHeight;
    }
  }
  if (parts.length === 0) return null;
  const [width, height] = [widest + margin, y + margin];
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}"><style>${style}</style><rect width="${width}" height="${height}" fill="#fff"/>${parts.join('')}</svg>\n`;
}
