/** A table in Markdown: first column to the left, the others to the right. */
export function markdownTable(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  const rule = head.map((_, i) => (i === 0 ? '---' : '---:'));
  return [line(head), line(rule), ...rows.map(line)].join('\n');
}

/** A number with so many digits after the point, `–` where there is none; no minus before nought. */
export function figure(value: number, digits: number): string {
  if (!Number.isFinite(value)) return '–';
  const text = value.toFixed(digits);
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}
