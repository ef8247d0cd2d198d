/** Styles of terminal text; without colour every style leaves the text as it is. */
export interface Styles {
  readonly strong: (text: string) => string;
  readonly faint: (text: string) => string;
  readonly figure: (text: string) => string;
}

const sgr = (on: number, off: number) => (text: string) => `\u001b[${on}m${text}\u001b[${off}m`;
const same = (text: string) => text;

/** Bold, dim and cyan as ANSI sequences (ECMA-48, SGR), or nothing. */
export function textStyles(color: boolean): Styles {
  return color
    ? { strong: sgr(1, 22), faint: sgr(2, 22), figure: sgr(36, 39) }
    : { strong: same, faint: same, figure: same };
}

/** Text from outside made safe for a terminal: no control, format or line-separating characters. */
export function printable(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, '').trim();
}

const length = (text: string) => [...text].length;

/** Breaks plain text into lines of at most `width` characters, between words where it can. */
export function wrapped(text: string, width: number): string[] {
  const room = Math.max(1, width);
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/ +/).filter(Boolean)) {
    let rest = word;
    if (line && length(line) + 1 + length(rest) <= room) {
      line += ` ${rest}`;
      continue;
    }
    if (line) lines.push(line);
    while (length(rest) > room) {
      lines.push([...rest].slice(0, room).join(''));
      rest = [...rest].slice(room).join('');
    }
    line = rest;
  }
  return line ? [...lines, line] : lines;
}

/** The line of care under every summary. */
export const careLine = (width: number): string[] =>
  wrapped('Stop at pain, tingling or numbness; keep clicks in headphones low. More in the README.', width);

/** Wrapped text whose first line begins with `mark` and whose others are indented as far. */
export function hanging(mark: string, text: string, width: number): string[] {
  const indent = ' '.repeat(length(mark));
  return wrapped(text, width - length(mark)).map((line, i) => (i === 0 ? mark : indent) + line);
}

/** Text filled up with blanks on the right, or on the left for `end`; never cut. */
export function padded(text: string, width: number, side: 'start' | 'end' = 'start'): string {
  const blanks = ' '.repeat(Math.max(0, width - length(text)));
  return side === 'start' ? text + blanks : blanks + text;
}
