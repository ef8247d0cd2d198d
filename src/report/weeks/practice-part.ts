import { dayWords } from '../../charts/weeks/day-course.ts';
import type { PracticeWeeks } from '../../charts/weeks/practice-weeks.ts';
import { dayNumber } from '../../core/progress/day-number.ts';
import type { PracticeLoad } from '../../core/progress/practice-load.ts';
import { jumpNote, jumpSentences, recordedOnlyWords } from '../../core/progress/practice-words.ts';
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

/** Days shown with their hands: four weeks. */
const daysShown = 28;

/** Practice by weeks and hands, the last weeks by days; large jumps as facts, without a figure of risk. */
export function practicePart(load: PracticeLoad, images: Readonly<Record<string, string>>): string {
  const [picture] = practicePicture(load);
  if (picture === undefined) return '';
  const jumps = jumpSentences(load).map((one) => `<li>${one}</li>`);
  const strokes = load.weeks.at(-1)!.strokes;
  return `<section id="practice"><h2>Practice</h2>
<p>${recordedOnlyWords(load)} In the last week ${strokes.R} strokes right, ${strokes.L} left${strokes.untold > 0 ? `, ${strokes.untold} whose hand isn't told` : ''}.</p>
${jumps.length === 0 ? '' : `<p>Weeks with much more than before:</p><ul>${jumps.join('')}</ul><p class="note">${jumpNote}</p>`}
<div class="pictures">${weekPicture(picture, images)}</div>
${dayTable(load)}</section>`;
}

function dayTable({ days }: PracticeLoad): string {
  const last = dayNumber(days.at(-1)!.from);
  const shown = days.filter(({ from }) => last - dayNumber(from) < daysShown).toReversed();
  const rows = shown.map(
    ({ from, recordedMinutes, loggedMinutes, strokes }) =>
      `<tr><th scope="row">${dayWords(dayNumber(from))}</th><td>${rounded(recordedMinutes, 1)} min</td><td>${rounded(loggedMinutes, 0)} min</td><td>${strokes.R}</td><td>${strokes.L}</td><td>${strokes.untold}</td></tr>`,
  );
  return `<details><summary>The last four weeks, day by day</summary><div class="scroll" tabindex="0" role="region" aria-label="Practice day by day"><table>
<thead><tr><th scope="col">Day</th><th scope="col">Recorded</th><th scope="col">Written down</th><th scope="col">Strokes right</th><th scope="col">Left</th><th scope="col">Hand not told</th></tr></thead>
<tbody>${rows.join('')}</tbody></table></div></details>`;
}
