import { dayWords } from '../../charts/weeks/day-course.ts';
import type { PracticeWeeks } from '../../charts/weeks/practice-weeks.ts';
import { dayNumber } from '../../core/progress/day-number.ts';
import type { PracticeLoad } from '../../core/progress/practice-load.ts';
import { rounded } from '../../core/result/figures.ts';
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
  const jumps = load.jumps.map(
    ({ week, minutes, before, weeksBefore }) =>
      `<li>Week from ${weekLabel(week)}: ${rounded(minutes, 0)} minutes, after ${rounded(before, 0)} a week in the ${weeksBefore === 1 ? 'week' : `${weeksBefore} weeks`} before.</li>`,
  );
  const strokes = load.weeks.at(-1)!.strokes;
  return `<section id="practice"><h2>Practice</h2>
<p>${load.logged ? 'Recorded takes, and minutes written down by hand.' : 'Recorded takes only, so the true amount is larger.'} In the last week ${strokes.R} strokes right, ${strokes.L} left${strokes.untold > 0 ? `, ${strokes.untold} whose hand isn’t told` : ''}.</p>
${jumps.length === 0 ? '' : `<p>Weeks with much more than before:</p><ul>${jumps.join('')}</ul><p class="note">This is a fact, no forecast: what rises fast is best followed by easier days. Take a break of about ten minutes in every hour.</p>`}
<div class="pictures">${weekPicture(picture, images)}</div></section>`;
}
