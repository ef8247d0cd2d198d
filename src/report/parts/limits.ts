import { sentence } from '../../core/result/sentences.ts';
import type { Reason, TakeResult } from '../../core/result/take-result.ts';
import { escapeHtml } from '../escape-html.ts';

const neverFromSound = 'Sound alone never tells technique, stick height, grip or tension.';

/** What to know about the recording, and what it can't tell. */
export function limits({ warnings, cannotTell }: TakeResult): string {
  const heard = warnings.length === 0 ? '' : `<h2>What the recording shows</h2>${list(warnings)}`;
  const alone = cannotTell.some(({ code }) => code === 'never-from-sound') ? '' : `<p>${neverFromSound}</p>`;
  return `<section id="limits">${heard}<h2>What this take can’t tell</h2>${list(cannotTell)}
${alone}
<p>A figure is as good as the recording: levels can be compared only between takes made with the same phone or microphone in the same place.</p></section>`;
}

function list(reasons: readonly Reason[]): string {
  if (reasons.length === 0) return '';
  return `<ul>${reasons.map((reason) => `<li>${escapeHtml(sentence(reason))}</li>`).join('')}</ul>`;
}
