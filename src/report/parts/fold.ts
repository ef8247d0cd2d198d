/**
 * A part that a narrow screen folds away: open as it stands in the file, so that it is all there without scripts and on
 * paper, and closed by the report's script where the screen is narrow. `first` ones stay open there too.
 */
export function fold(summary: string, inside: string, { first = false } = {}): string {
  return `<details class="fold" open${first ? ' data-first' : ''}><summary>${summary}</summary>${inside}</details>`;
}
