import type { Conditions } from '../../core/progress/conditions.ts';
import { rounded } from '../../core/result/figures.ts';
import { outsideText } from '../escape-html.ts';

/** What figures speak of, as HTML: tempo, technique, pad, sticks, device. */
export function likeWords({ bpm, technique, pad, sticks, device }: Conditions): string {
  const tempo = bpm === null ? [] : [`about ${rounded(bpm, 0)} BPM`];
  const noted = [technique, pad, sticks, device].flatMap((text) =>
    text === null ? [] : [outsideText(text, 60)],
  );
  return [...tempo, ...noted].join(', ') || 'nothing noted';
}
