import type { WeekPicture } from '../../charts/weeks/week-picture.ts';
import type { ExercisePlay } from '../../core/progress/exercise-progress.ts';
import { type PeriodsCompared, realChanges } from '../../core/progress/periods-compared.ts';
import { verdictWords } from '../../core/progress/progress-words.ts';
import { measureName } from '../../core/result/names.ts';
import { escapeHtml, outsideText } from '../escape-html.ts';
import { care } from '../parts/care.ts';
import { dayCourses } from './day-courses.ts';
import { likeWords } from './like-words.ts';
import { verdictTable } from './verdict-table.ts';
import { type PageParts, weekPage } from './week-page.ts';
import { weekData, weekPicture } from './week-picture-html.ts';

/** Two stretches of days of one exercise. Names are untrusted. */
export interface Periods {
  readonly player: string;
  readonly exercise: string;
  readonly fromDay: string;
  readonly plays: readonly ExercisePlay[];
  readonly compared: PeriodsCompared;
}

export function periodPictures({ plays, fromDay, compared }: Periods): readonly WeekPicture[] {
  return dayCourses(plays, {
    id: 'period',
    trendOf: (figure) => {
      const found = compared.changes.find((one) => one.figure === figure);
      return found === undefined ? '' : `before against after: ${verdictWords[found.verdict]}`;
    },
    mark: { day: fromDay, what: 'after begins' },
  });
}

/** The days before a day against those from it on as one HTML file, with verdicts. */
export function periodsPage(periods: Periods, parts: PageParts): string {
  const { player, exercise, fromDay, compared } = periods;
  const pictures = periodPictures(periods);
  const { changes, like, leftOut } = compared;
  const said = realChanges(compared);
  const few = changes.every(({ verdict }) => verdict === 'too-few-days');
  const verdict = few
    ? 'There are too few days for a verdict.'
    : said.length === 0
      ? 'No clear change.'
      : said.map(({ figure, verdict: word }) => `${measureName(figure)}: ${verdictWords[word]}.`).join(' ');
  return weekPage(
    {
      kind: 'Days before and after',
      title: `${player}: ${exercise}`,
      lead: `<p>Before ${fromDay} against from ${fromDay} on.</p>`,
      body: `<div class="verdict"><p><strong>${escapeHtml(verdict)}</strong></p></div>
<p>The figures speak of: ${like === null ? 'nothing yet' : likeWords(like)}.${leftOut === 0 ? '' : ` ${leftOut} ${leftOut === 1 ? 'take is' : 'takes are'} left out, at another tempo or technique.`}</p>
<section id="verdicts"><h2>${outsideText(exercise, 80)}</h2>${verdictTable(changes, ['before', 'after'])}</section>
${pictures.length === 0 ? '' : `<section id="pictures"><h2>Pictures</h2><div class="pictures">${pictures.map((one) => weekPicture(one, parts.images)).join('')}</div></section>`}
${care()}`,
      data: weekData(pictures),
    },
    parts,
  );
}
