import { escapeHtml } from '../escape-html.ts';
import type { TakeFile } from '../take-files.ts';

/** Gzip (RFC 1952) of a file's bytes, in base64. */
export type Pack = (contents: string | Uint8Array) => string;

/** Least and most base64 characters that all packed files may take up together. */
const leastRoom = 30_000;
const mostRoom = 150_000;

/**
 * Files to take out of the report, packed inside it; the buttons need the script, which is said where it is off.
 * `spare` characters are left in the report; a file that doesn't fit is named, not held.
 */
export function downloads(files: readonly TakeFile[], pack: Pack, spare: number): string {
  let room = Math.min(mostRoom, Math.max(leastRoom, spare));
  const items = files.map(({ name, type, says, contents }) => {
    const packed = pack(contents);
    if (packed.length > room) {
      return `<li><strong>${escapeHtml(name)}</strong> ${escapeHtml(says)}. <span class="note">Too large to go along in this report; the program writes it beside it when asked to.</span></li>`;
    }
    room -= packed.length;
    const held = `<script type="text/plain" data-packed="${escapeHtml(name)}">${packed}</script>`;
    return `<li><button type="button" data-file="${escapeHtml(name)}" data-type="${escapeHtml(type)}">Save ${escapeHtml(name)}</button> ${escapeHtml(says)}${held}</li>`;
  });
  return `<section id="files"><h2>Files to keep</h2><noscript><p>Saving needs scripts, and scripts are off here.</p></noscript><ul>${items.join('')}</ul></section>`;
}
