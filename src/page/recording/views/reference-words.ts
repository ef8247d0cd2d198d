import type { SetUpComparison } from '../../../core/progress/compare-set-up.ts';
import type { HandHeard } from '../../../core/progress/set-up-reference.ts';

const db = (value: number) => `${Math.abs(value).toFixed(1)} dB`;
const signed = (value: number) => `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(1)}`;

/** What was heard of a hand, in words; null where it is as it should be. */
export function handWords(heard: HandHeard): string | null {
  switch (heard.state) {
    case 'heard':
      return null;
    case 'too-few':
      return `Only ${heard.strokes} of eight strokes were heard. Play eight single strokes, about one a second, and press Stop.`;
    case 'too-many':
      return `${heard.strokes} strokes were heard; eight are wanted. Play eight single strokes, about one a second, and press Stop.`;
    case 'uneven':
      return `The strokes differ by ${db(heard.spreadDb)}: they weren't at one height. Choose a height that you can keep, and play eight again.`;
  }
}

/** Whether levels compare with last time, in words. */
export function comparisonWords(
  { verdict, shift, handsApart }: SetUpComparison,
  day: string,
): { readonly good: boolean; readonly text: string } {
  const interval = `${signed(shift.value)} dB (between ${signed(shift.low)} and ${signed(shift.high)})`;
  switch (verdict) {
    case 'alike':
      return {
        good: true,
        text: `As on ${day}: the strokes are as loud as then, ${interval}. Levels of takes from now on compare with those.`,
      };
    case 'different':
      return {
        good: false,
        text: `Not as on ${day}: the strokes are ${db(shift.value)} ${shift.value > 0 ? 'louder' : 'softer'}, ${interval}. The microphone stands elsewhere, its level was changed, or you play from another height. Levels won't be compared with those from before. To compare them, set it up as it was and play the strokes again.`,
      };
    case 'not-told':
      return {
        good: false,
        text:
          handsApart.low > 2 || handsApart.high < -2
            ? `The hands have moved apart by ${db(handsApart.value)} since ${day}: does the microphone stand nearer to one of them? Levels won't be compared until it is as it was.`
            : `That doesn't decide whether it is as on ${day}: ${interval}. Play the strokes again, as alike as you can.`,
      };
  }
}
