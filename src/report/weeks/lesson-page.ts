import { parseSheet } from '../../core/exercise/parse-sheet.ts';
import { assignmentWords, playedWords } from '../../core/progress/assignment-words.ts';
import { comparedFigures } from '../../core/progress/compared-figures.ts';
import type { Lesson } from '../../core/progress/lesson.ts';
import { realChanges } from '../../core/progress/periods-compared.ts';
import { minuteWords } from '../../core/progress/practice-words.ts';
import { changeText, stillNeeded, verdictWords } from '../../core/progress/progress-words.ts';
import { standingWords, weakWords } from '../../core/progress/weak-line-words.ts';
import { capital, counted, rounded } from '../../core/result/figures.ts';
import { measureName } from '../../core/result/names.ts';
import { sentence } from '../../core/result/sentences.ts';
import { escapeHtml, outsideText } from '../escape-html.ts';
import { care } from '../parts/care.ts';
import { type PageParts, weekPage } from './week-page.ts';

/** A lesson with what can be listened to. */
export interface ShownLesson {
  /** Untrusted. */
  readonly player: string;
  readonly lesson: Lesson;
  /** For each of the weakest lines the sound of its newest playing as a data URI, or null. */
  readonly sounds: readonly (string | null)[];
}

/** One page for the lesson with one player: what was asked, what was played, what is weakest, what changed. */
export function lessonPage({ player, lesson, sounds }: ShownLesson, parts: PageParts): string {
  return weekPage(
    {
      kind: 'For the lesson',
      title: player,
      lead: `<p>From ${lesson.since} to ${lesson.today}.</p>`,
      body: `${discomfortPart(lesson)}
${assignmentPart(lesson)}
${practicePart(lesson)}
${weakestPart(lesson, sounds)}
${changedPart(lesson)}
${nextPart(lesson)}
${remarkPart(lesson)}
${care()}`,
      data: '',
    },
    parts,
  );
}

function discomfortPart({ discomfortDays }: Lesson): string {
  if (discomfortDays.length === 0) return '';
  return `<div class="unlike"><p><strong>Discomfort was noted: ${discomfortDays.join(', ')}.</strong> No faster tempo is advised. Ask first; rest until it is gone, and see a physician or physiotherapist if it comes back.</p></div>`;
}

/** Lines of a sheet that are written out. */
const mostLines = 12;

function assignmentPart({ assignments, today }: Lesson): string {
  if (assignments.length === 0)
    return '<section id="asked"><h2>What was asked</h2><p>No assignment is open.</p></section>';
  const items = assignments.map(({ assignment, plays }) => {
    const { title, note, sheetText } = assignment;
    const parsed = parseSheet(sheetText);
    const lines = parsed.ok ? parsed.sheet.lines : [];
    // What is done needn't be played from the page any more.
    const shown = assignment.doneAt === null ? lines.slice(0, mostLines) : [];
    const written = shown.map(
      ({ label, notation, bpm }) =>
        `<li>${label === notation ? '' : `${outsideText(label, 80)} `}<span class="letters">${outsideText(notation, 120)}</span>${bpm === null ? '' : `, ${bpm} BPM`}</li>`,
    );
    const more =
      shown.length > 0 && lines.length > mostLines
        ? `<li>and ${lines.length - mostLines} more lines</li>`
        : '';
    return `<div class="asked"><h3>${outsideText(title === '' ? 'A sheet without a title' : title, 120)}</h3>
<p><strong>${escapeHtml(capital(assignmentWords(assignment, today)))}; ${escapeHtml(playedWords(plays))}.</strong></p>
${note === '' ? '' : `<p>${outsideText(note, 1000)}</p>`}${shown.length === 0 ? '' : `<ul>${written.join('')}${more}</ul>`}</div>`;
  });
  return `<section id="asked"><h2>What was asked</h2>${items.join('')}</section>`;
}

function practicePart({ days }: Lesson): string {
  const sum = (of: (day: Lesson['days'][number]) => number) => days.reduce((all, day) => all + of(day), 0);
  if (days.length === 0)
    return '<section id="played"><h2>What was played</h2><p>Nothing was recorded or written down since.</p></section>';
  const written = sum(({ writtenMinutes }) => writtenMinutes);
  const minutes = sum(({ recordedMinutes }) => recordedMinutes);
  const [right, left] = [
    sum(({ strokesRight, writtenRight }) => strokesRight + writtenRight),
    sum(({ strokesLeft, writtenLeft }) => strokesLeft + writtenLeft),
  ];
  return `<section id="played"><h2>What was played</h2>
<p>On ${counted(days.length, 'day')}: ${counted(
    sum(({ takes }) => takes),
    'take',
  )}, ${minuteWords(minutes)} recorded${written > 0 ? ` and ${minuteWords(written)} written down` : "; practice without recording isn't in it"}. ${right} strokes right, ${left} left.</p></section>`;
}

function weakestPart({ weakest }: Lesson, sounds: ShownLesson['sounds']): string {
  if (weakest.length === 0)
    return '<section id="weakest"><h2>Weakest lines</h2><p>No take since tells enough of a line.</p></section>';
  const items = weakest.map((line, i) => {
    const { label, day, bpm } = line;
    const sound = sounds[i] ?? null;
    const heard =
      sound === null
        ? '<p class="note">No recording of it is kept.</p>'
        : `<audio controls preload="metadata" aria-label="Sound of line ${i + 1}" src="${escapeHtml(sound)}"></audio>`;
    return `<li><h3>${outsideText(label, 80)}</h3>
<p>${day}${bpm === null ? '' : `, ${rounded(bpm, 0)} BPM`}: <strong>${escapeHtml(weakWords(line))}</strong>. ${escapeHtml(standingWords(line))}</p>
${heard}</li>`;
  });
  return `<section id="weakest"><h2>${weakest.length === 1 ? 'Weakest line' : 'Weakest lines'}</h2><ol class="weak">${items.join('')}</ol></section>`;
}

function changedPart({ exercises, since }: Lesson): string {
  const changed = exercises.flatMap(({ exercise, compared }) => {
    const items = realChanges(compared).map((one) => {
      const figure = comparedFigures.find(({ id }) => id === one.figure)!;
      const { value, low, high } = one.change!;
      return `<li>${escapeHtml(measureName(one.figure))}: <strong>${verdictWords[one.verdict]}</strong>, ${changeText(value, figure)} (${changeText(low, figure)} to ${changeText(high, figure)}), ${one.days[1]} days against ${one.days[0]} before</li>`;
    });
    return items.length === 0
      ? []
      : [`<li><strong>${outsideText(exercise.label, 80)}</strong><ul>${items.join('')}</ul></li>`];
  });
  const judged = exercises.filter(({ compared }) =>
    compared.changes.some(({ verdict }) => verdict !== 'too-few-days'),
  );
  const unjudged = exercises.filter((one) => !judged.includes(one));
  const needed = unjudged.map(({ exercise, compared }) => {
    const open = compared.changes.map(stillNeeded).find((text) => text !== '') ?? '';
    return `<li>${outsideText(exercise.label, 80)}: ${open === '' ? 'nothing before that it could be held against.' : escapeHtml(open)}</li>`;
  });
  const said =
    changed.length > 0
      ? `<ul>${changed.join('')}</ul>`
      : judged.length > 0
        ? '<p>Nothing changed that these days can show.</p>'
        : '<p>Too few days yet to say what changed.</p>';
  return `<section id="changed"><h2>What changed for real</h2>
${said}${needed.length === 0 ? '' : `<ul class="note">${needed.join('')}</ul>`}
<p class="note">The days from ${since} on against those of the twelve weeks before, like takes only. All verdicts of this page together claim a change that isn't there in fewer than one lesson of twenty.</p></section>`;
}

function nextPart({ exercises, discomfortDays }: Lesson): string {
  if (exercises.length === 0 || discomfortDays.length > 0) return '';
  const items = exercises.map(
    ({ exercise, next }) =>
      `<li><strong>${outsideText(exercise.label, 80)}:</strong> ${escapeHtml(sentence(next))}</li>`,
  );
  return `<section id="next"><h2>Next tempo</h2><ul>${items.join('')}</ul></section>`;
}

function remarkPart({ remarks }: Lesson): string {
  const items = remarks.map(
    ({ text, author, moment, day }) =>
      `<li>${day}${moment === null ? '' : `, at ${clock(moment)}`}${author === '' ? '' : `, ${outsideText(author, 60)}`}: ${outsideText(text, 600)}</li>`,
  );
  const said = items.length === 0 ? '' : `<ul>${items.join('')}</ul>`;
  return `<section id="remarks"><h2>Remarks</h2>${said}
<div class="write-here" aria-hidden="true"></div><p class="note screen-only">Printed, this page has room to write here. A remark that is written on a take, at a moment of it, is kept with the take and stands here the next time.</p></section>`;
}

const clock = (seconds: number) =>
  `${Math.floor(seconds / 60)}:${String(Math.floor(seconds % 60)).padStart(2, '0')}`;
