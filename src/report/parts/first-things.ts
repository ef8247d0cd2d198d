import { clockTime } from '../../charts/clock-time.ts';
import { sentence } from '../../core/result/sentences.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { escapeHtml } from '../escape-html.ts';
import { playButton } from './play-button.ts';

/** Moments named beside one piece of advice. */
const momentsShown = 3;

/** What to work on first, each with the moments of the take to listen to; buttons where the sound is in the file. */
export function firstThings({ advice, strokes }: TakeResult, withSound: boolean): string {
  if (advice.length === 0) return '';
  const items = advice.map((item) => {
    const moments = item.strokes.slice(0, momentsShown).flatMap((stroke) => {
      const time = strokes.time[stroke];
      return time === undefined ? [] : [moment(time, withSound)];
    });
    const listen =
      moments.length === 0
        ? ''
        : `<p class="moments">${withSound ? 'Listen again' : 'Moments to listen to again'}: ${moments.join(withSound ? ' ' : ', ')}</p>`;
    return `<li><p>${escapeHtml(sentence(item))}</p>${listen}</li>`;
  });
  return `<section id="first"><h2>What to do next</h2><ol class="advice">${items.join('')}</ol></section>`;
}

function moment(time: number, withSound: boolean): string {
  const label = clockTime(time, 1);
  return withSound ? playButton(time, label) : label;
}
