import { findingSentence, sentence } from '../../core/result/sentences.ts';
import type { Reason, TakeResult } from '../../core/result/take-result.ts';
import { escapeHtml } from '../escape-html.ts';

const neverFromSound = 'Sound alone never tells technique, stick height, grip or tension.';

/** What to know about the recording, and what it can't tell. */
export function limits({ recording, warnings, cannotTell }: TakeResult): string {
  const heard = recordingShown(recording.check, warnings);
  const alone = cannotTell.some(({ code }) => code === 'never-from-sound') ? '' : `<p>${neverFromSound}</p>`;
  return `<section id="limits">${heard}<h2>What this take can't tell</h2>${list(cannotTell)}
${alone}
<p>A figure is as good as the recording: levels can be compared only between takes made with the same phone or microphone in the same place.</p></section>`;
}

/** What was said of the recording and found in it; one line where all is well, nothing where it wasn't checked. */
function recordingShown(check: TakeResult['recording']['check'], warnings: readonly Reason[]): string {
  if (warnings.length === 0 && check === undefined) return '';
  const fine = check?.length === 0 ? '<p>Checked: nothing stands in the way of the figures.</p>' : '';
  return `<h2>The recording</h2>${items([...warnings.map(sentence), ...(check ?? []).map(findingSentence)])}${fine}`;
}

const list = (reasons: readonly Reason[]) => items(reasons.map(sentence));

function items(sentences: readonly string[]): string {
  if (sentences.length === 0) return '';
  return `<ul>${sentences.map((text) => `<li>${escapeHtml(text)}</li>`).join('')}</ul>`;
}
