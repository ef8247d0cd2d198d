import { dayWords } from '../../charts/weeks/day-course.ts';
import type { PracticeWeeks } from '../../charts/weeks/practice-weeks.ts';
import { dayNumber } from '../../core/progress/day-number.ts';
import type { PracticeLoad } from '../../core/progress/practice-load.ts';
import { jumpNote, jumpSentences, recordedOnlyWords } from '../../core/progress/practice-words.ts';
import { weekPicture } from './week-picture-html.ts';

const weekLabel = (from: string) => dayWords(dayNumber(from));

/** The picture of practice by weeks; none without practice. */
export function practicePicture({ weeks }: PracticeLoad): readonly PracticeWeeks[] {
  if (weeks.length === 0) return [];
  return [
    {
      kind: 'practice-weeks',
      id: 'practice-weeks',
      question: 'How much was practised, week by week?',
      weeks: weeks.map(({ from, recordedMinutes, loggedMinutes, strokes }) => ({
        from,
        label: weekLabel(from),
        recorded: recordedMinutes,
        written: loggedMinutes,
        right: strokes.R,
        left: strokes.L,
      })),
    },
  ];
}

/** Practice by weeks and hands; large jumps as facts, without a figure of risk. */
export function practicePart(load: PracticeLoad, images: Readonly<Record<string, string>>): string {
  const [picture] = practicePicture(load);
  if (picture === undefined) return '';
  const jumps = jumpSentences(load).map((one) => `<li>${one}</li>`);
  const strokes = load.weeks.at(-1)!.strokes;
  return `<section id="practice"><h2>Practice</h2>
<p>${recordedOnlyWords(load)} In the last week ${strokes.R} strokes right, ${strokes.L} left${strokes.untold > 0 ? `, ${strokes.untold} whose hand isn’t told` : ''}.</p>
${jumps.length === 0 ? '' : `<p>Weeks with much more than before:</p><ul>${jumps.join('')}</ul><p class="note">${jumpNote}</p>`}
<div class="pictures">${weekPicture(picture, images)}</div></section>`;
}
