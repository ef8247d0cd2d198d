import { sentence } from '../../core/result/sentences.ts';
import type { Reason } from '../../core/result/take-result.ts';
import { escapeHtml } from '../escape-html.ts';

/** In place of scores and pictures: why there is no grade, and what helps most often. */
export function notGradable(reason: Reason): string {
  return `<section id="no-grade"><h2>This take could not be graded</h2>
<p class="lead">${escapeHtml(sentence(reason))}</p>
<p>No scores and no figures are shown, because they would be guesses. What helps most often:</p>
<ul><li>Put the phone or microphone an arm's length from the pad, on something that doesn't shake.</li>
<li>Switch off voice processing or noise reduction in the recording app, and don't cover the microphone.</li>
<li>Play the exercise from its first line, after two seconds of silence, and check that it is the exercise named here.</li>
<li>Play the click over headphones at a low volume, or not at all.</li></ul></section>`;
}
