import { strokeWords } from '../../charts/stroke-words.ts';
import type { DrawnPart } from '../drawn-part.ts';
import type { ChosenStroke } from './chosen-stroke.ts';

/** A bar at the foot of the page that tells of the chosen stroke, leads to the ones beside it and closes. */
export function strokeBar(result: DrawnPart, chosen: ChosenStroke): void {
  const bar = document.createElement('aside');
  bar.id = 'stroke-bar';
  bar.hidden = true;
  bar.setAttribute('aria-label', 'The chosen stroke');
  const words = document.createElement('p');
  words.setAttribute('aria-live', 'polite');
  const count = result.strokes.time.length;
  const step = (by: number) => () => {
    const stroke = chosen.get();
    if (stroke !== null) chosen.choose(Math.min(count - 1, Math.max(0, stroke + by)));
  };
  const play = button('Play from here', () => {});
  if (document.getElementById('listen') === null) play.hidden = true;
  bar.append(
    words,
    play,
    button('Stroke before', step(-1)),
    button('Next stroke', step(1)),
    button('Close', () => chosen.choose(null)),
  );
  document.body.append(bar);
  const hint = document.getElementById('stroke-hint');
  if (hint !== null) hint.hidden = false;
  chosen.listen((stroke) => {
    bar.hidden = stroke === null;
    // Whatever plays the take hears of every button with a moment.
    play.dataset.moment = stroke === null ? '' : result.strokes.time[stroke]!.toFixed(3);
    words.textContent = stroke === null ? '' : strokeWords(result, stroke).join('; ');
  });
}

function button(label: string, act: () => void): HTMLButtonElement {
  const made = document.createElement('button');
  made.type = 'button';
  made.textContent = label;
  made.addEventListener('click', act);
  return made;
}
