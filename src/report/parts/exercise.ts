import { counted } from '../../core/result/figures.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { outsideText } from '../escape-html.ts';
import { notation } from './notation.ts';

/** Lines of a sheet that are drawn; the rest is counted. */
const linesShown = 24;

/** The exercise: each line in notes with its hands, how often and how fast. */
export function exercise(result: TakeResult): string {
  const { lines } = result.sheet;
  if (lines.length === 0) return '';
  const items = lines.slice(0, linesShown).map((line, i) => {
    const bpm = line.bpm === null ? 'tempo left open' : `at ${line.bpm} beats a minute`;
    const lead = line.leadChange ? ', the other hand leads every second time' : '';
    const band =
      line.ratioBand === null
        ? ''
        : `, accents ${line.ratioBand.minDb} to ${line.ratioBand.maxDb} dB above the taps`;
    const notes = notation(result, i) ?? `<p class="letters">${outsideText(line.notation)}</p>`;
    const times = line.repeats === 1 ? 'once' : `${line.repeats} times`;
    return `<li><p class="line"><strong>${outsideText(line.label)}</strong> ${times}, ${bpm}${lead}${band}</p>${notes}</li>`;
  });
  const more =
    lines.length > linesShown ? `<p>And ${counted(lines.length - linesShown, 'more line')}.</p>` : '';
  return `<section id="exercise"><h2>The exercise</h2><ol class="lines">${items.join('')}</ol>${more}</section>`;
}
