import { escapeHtml } from '../escape-html.ts';

/** A button that plays the take from a moment, s, named by its label. The script of the report makes it work. */
export function playButton(time: number, label: string): string {
  const shown = escapeHtml(label);
  return `<button type="button" class="moment" data-moment="${time.toFixed(3)}" aria-label="Play from ${shown}">▶ ${shown}</button>`;
}
