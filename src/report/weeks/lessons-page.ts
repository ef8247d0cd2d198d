import { assignmentState, assignmentWords, playedWords } from '../../core/progress/assignment-words.ts';
import type { Lesson } from '../../core/progress/lesson.ts';
import { nextWords } from '../../core/progress/next-words.ts';
import { realChanges } from '../../core/progress/periods-compared.ts';
import { minuteWords } from '../../core/progress/practice-words.ts';
import { verdictWords } from '../../core/progress/progress-words.ts';
import { weakWords } from '../../core/progress/weak-line-words.ts';
import { counted } from '../../core/result/figures.ts';
import { measureName } from '../../core/result/names.ts';
import { escapeHtml, outsideText } from '../escape-html.ts';
import { type PageParts, weekPage } from './week-page.ts';

/** Everyone's lesson since the last one; names are untrusted. */
export interface ShownLessons {
  readonly since: string;
  readonly today: string;
  readonly lessons: readonly { readonly player: string; readonly lesson: Lesson }[];
}

/** All players since the last lesson on one page, a row each. */
export function lessonsPage({ since, today, lessons }: ShownLessons, parts: PageParts): string {
  const rows = lessons.map(({ player, lesson }) => row(player, lesson));
  return weekPage(
    {
      kind: 'For the lessons',
      title: 'All players since the last lesson',
      lead: `<p>From ${since} to ${today}. ${counted(lessons.length, 'player')}.</p>`,
      body: `<table class="stack players"><thead><tr><th scope="col">Player</th><th scope="col">Asked</th><th scope="col">Played</th>
<th scope="col">Weakest lines</th><th scope="col">Changed for real</th><th scope="col">Next tempo</th></tr></thead><tbody>${rows.join('')}</tbody></table>
<p class="note">All that this page says to have changed, of everybody together, claims a change that isn't there on fewer than one page of twenty. A player's own page asks less at once and may show more.</p>`,
      data: '',
    },
    parts,
  );
}

/** Exercises whose next tempo stands on the page of all, those played last. */
const mostTempos = 4;

function row(player: string, lesson: Lesson): string {
  const { assignments, today, days, weakest, exercises, discomfortDays } = lesson;
  const asked = assignments.map(({ assignment, plays }) => {
    const mark = { open: '○', 'due-today': '●', overdue: '!', done: '✓' }[assignmentState(assignment, today)];
    return `<p>${mark} ${outsideText(assignment.title === '' ? 'A sheet' : assignment.title, 60)}: ${escapeHtml(assignmentWords(assignment, today))}; ${escapeHtml(playedWords(plays))}</p>`;
  });
  const takes = days.reduce((sum, day) => sum + day.takes, 0);
  const minutes = days.reduce((sum, day) => sum + day.recordedMinutes + day.writtenMinutes, 0);
  const weak = weakest.map(
    (line) =>
      `<p>${outsideText(line.label, 60)}, ${escapeHtml(weakWords(line))}${line.apart ? '; <strong>clearly weaker than the others</strong>' : ''}</p>`,
  );
  const changes = exercises.flatMap(({ exercise, compared }) => {
    const found = realChanges(compared).map(
      ({ figure, verdict }) => `${escapeHtml(measureName(figure).toLowerCase())} ${verdictWords[verdict]}`,
    );
    return found.length === 0 ? [] : [`<p>${outsideText(exercise.label, 60)}: ${found.join(', ')}</p>`];
  });
  const shown = exercises.slice(0, mostTempos);
  const tempos = shown.map(
    ({ exercise, next }) => `<p>${outsideText(exercise.label, 60)}: ${escapeHtml(nextWords(next))}</p>`,
  );
  if (exercises.length > shown.length)
    tempos.push(`<p>and ${exercises.length - shown.length} more on the player's own page</p>`);
  const next = discomfortDays.length === 0 ? tempos.join('') : 'none while discomfort is noted';
  const stop =
    discomfortDays.length === 0
      ? ''
      : `<p><strong>Discomfort noted: ${discomfortDays.join(', ')}</strong></p>`;
  const html = `<tr><th scope="row">${outsideText(player, 60)}${stop}</th><td data-name="asked">${asked.join('') || 'nothing open'}</td>
<td data-name="played">${counted(takes, 'take')} on ${counted(days.length, 'day')}, ${minuteWords(minutes)}</td>
<td data-name="weakest lines">${weak.join('') || 'not told'}</td><td data-name="changed">${changes.join('') || 'nothing shown'}</td>
<td data-name="next tempo">${next || 'nothing played'}</td></tr>`;
  return html.replace(/\d{4}-\d\d-\d\d/g, '<span class="day">$&</span>');
}
