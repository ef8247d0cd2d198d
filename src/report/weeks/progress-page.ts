import type { WeekPicture } from '../../charts/weeks/week-picture.ts';
import { comparedFigures } from '../../core/progress/compared-figures.ts';
import { dayNumber } from '../../core/progress/day-number.ts';
import type { ExercisePlay, ExerciseProgress } from '../../core/progress/exercise-progress.ts';
import type { GuessRecord } from '../../core/progress/guess-record.ts';
import { guessWords } from '../../core/progress/guess-words.ts';
import { freshDays } from '../../core/progress/next-tempo.ts';
import type { PracticeLoad } from '../../core/progress/practice-load.ts';
import { changeText, figureText, trendWord } from '../../core/progress/progress-words.ts';
import { counted, rounded } from '../../core/result/figures.ts';
import { measureName } from '../../core/result/names.ts';
import { sentence } from '../../core/result/sentences.ts';
import { shownScore } from '../../core/scoring/score-curve.ts';
import { escapeHtml, outsideText } from '../escape-html.ts';
import { care } from '../parts/care.ts';
import { dayCourses } from './day-courses.ts';
import { likeWords } from './like-words.ts';
import { practicePart, practicePicture } from './practice-part.ts';
import { type PageParts, weekPage } from './week-page.ts';
import { weekData, weekPicture } from './week-picture-html.ts';

/** One exercise of a player; its label is untrusted. */
interface ShownExercise {
  readonly label: string;
  readonly plays: readonly ExercisePlay[];
  readonly progress: ExerciseProgress;
}

export interface PlayerProgress {
  readonly player: string;
  /** Today where the player is. */
  readonly today: string;
  readonly exercises: readonly ShownExercise[];
  readonly load: PracticeLoad;
  readonly discomfort: boolean;
  readonly guesses: readonly GuessRecord[];
}

function picturesOf(
  { plays, progress }: ShownExercise,
  index: number,
  today: string,
): readonly WeekPicture[] {
  const { spreadByTempo, figures } = progress;
  const courses = dayCourses(plays, {
    id: `exercise-${index}`,
    trendOf: (id) => {
      const found = figures.find(({ figure }) => figure.id === id)!;
      return trendWord(found.trend, found.figure);
    },
  });
  if (spreadByTempo.length === 0) return courses;
  const takes = spreadByTempo.map(({ day, bpm, spread }) => ({
    day,
    bpm,
    spread: spread.value,
    low: spread.low,
    high: spread.high,
    recent: dayNumber(today) - dayNumber(day) <= freshDays,
  }));
  const question = 'How fast at which evenness?';
  return [...courses, { kind: 'spread-by-tempo', id: `exercise-${index}-tempo`, question, takes }];
}

/** Every picture of the page, in its order. */
export function progressPictures({ exercises, today, load }: PlayerProgress): readonly WeekPicture[] {
  return [...exercises.flatMap((one, i) => picturesOf(one, i, today)), ...practicePicture(load)];
}

/** A player's exercises over the weeks as one HTML file: trends, pictures, cleanest takes, next tempo, practice. */
export function progressPage(shown: PlayerProgress, parts: PageParts): string {
  const { player, today, exercises, load, discomfort, guesses } = shown;
  const body = exercises.map((one, i) => exercisePart(one, picturesOf(one, i, today), parts.images));
  const stop = discomfort
    ? '<div class="unlike"><p><strong>Discomfort was noted in the last days: no tempo is advised.</strong> Rest until it is gone, and see a physician or physiotherapist if it comes back.</p></div>'
    : '';
  return weekPage(
    {
      kind: 'Progress over the weeks',
      title: player,
      lead: `<p>Up to ${today}. A day counts once, by the middle of its takes, not by the best one.</p>`,
      body: `${stop}${body.join('\n') || '<p>No take of this player is kept yet.</p>'}
${guessPart(guesses)}
${practicePart(load, parts.images)}
${care()}`,
      data: weekData(progressPictures(shown)),
    },
    parts,
  );
}

function guessPart(guesses: readonly GuessRecord[]): string {
  if (guesses.length === 0) return '';
  const items = guesses.map((one) => `<li>${escapeHtml(guessWords(one))}</li>`);
  return `<section id="guesses"><h2>How well the guesses fit</h2>
<p>Before a take's figures were shown, these questions were answered by ear.</p><ul>${items.join('')}</ul></section>`;
}

function exercisePart(
  { label, progress }: ShownExercise,
  pictures: readonly WeekPicture[],
  images: PageParts['images'],
): string {
  const { plays, days, like, cleanest, cleanestTempo, next } = progress;
  if (like === null) return '';
  const best = cleanest.map(
    ({ day, bpm, score }) =>
      `<li>${day}${bpm === null ? '' : `, ${rounded(bpm, 0)} BPM`}: score ${shownScore(score)}</li>`,
  );
  const tempo =
    cleanestTempo === null
      ? 'No tempo was secure in every part yet.'
      : `Cleanest tempo: ${rounded(cleanestTempo.bpm, 0)} BPM, secure on ${cleanestTempo.days === 1 ? 'one day' : `${cleanestTempo.days} days`}.`;
  return `<section class="exercise-weeks"><h2>${outsideText(label, 80)}</h2>
<div class="verdict"><p><strong>Next: ${escapeHtml(sentence(next))}</strong></p><p>${tempo}</p></div>
<p>${counted(plays, 'take')} on ${counted(days, 'day')}. Trends speak of takes like the newest: ${likeWords(like)}.</p>
${trends(progress)}
<h3>Cleanest takes</h3><ol>${best.join('')}</ol>
<div class="pictures">${pictures.map((one) => weekPicture(one, images, label)).join('')}</div></section>`;
}

function trends({ figures }: ExerciseProgress): string {
  const rows = figures
    .filter(({ days }) => days.length > 0)
    .map(({ figure, trend, days, leftOut }) => {
      const { perWeek } = trend;
      const change =
        perWeek === null
          ? ''
          : `${changeText(perWeek.value, figure)} (${changeText(perWeek.low, figure)} to ${changeText(perWeek.high, figure)})`;
      return `<tr><th scope="row">${escapeHtml(measureName(figure.id))}</th><td data-name="last day">${figureText(days.at(-1)!.median, figure)}</td>
<td data-name="change a week">${change}</td><td class="word" data-name="trend">${trendWord(trend, figure)}</td>
<td data-name="rests on">${counted(days.length, 'day')}${leftOut === 0 ? '' : `, ${leftOut} unlike takes left out`}</td></tr>`;
    });
  const silent = comparedFigures.filter(({ id }) =>
    figures.some(({ figure, days, leftOut }) => figure.id === id && days.length === 0 && leftOut > 0),
  );
  const note =
    silent.length === 0
      ? ''
      : `<p class="note">Not compared, since pad, sticks or recording device differ or weren't noted: ${escapeHtml(silent.map(({ id }) => measureName(id).toLowerCase()).join(', '))}.</p>`;
  return `<table class="stack"><thead><tr><th scope="col">Figure</th><th scope="col">Last day</th><th scope="col">Change a week (95 % interval)</th>
<th scope="col">Trend</th><th scope="col">Rests on</th></tr></thead><tbody>${rows.join('')}</tbody></table>${note}
<p class="note">Each trend is judged by itself: of twenty that don't move, one may be called a trend.</p>`;
}
