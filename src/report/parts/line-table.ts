import type { TakeResult } from '../../core/result/take-result.ts';
import { shownScore } from '../../core/scoring/score-curve.ts';
import { isWeak, type LineCourse, lineCourses } from '../../core/session/line-course.ts';
import type { RepeatFigures } from '../../core/session/session-result.ts';
import { outsideText } from '../escape-html.ts';
import { formatFigure } from '../format-figure.ts';
import { scoreBars } from './score-bars.ts';

const linesShown = 48;
const barsShown = 24;
const barStep = 16;

/** How each line went: a small bar a repeat, where it broke and why, timing and accents; empty for one short line. */
export function lineTable(result: TakeResult): string {
  const courses = lineCourses(result);
  if (courses.length < 2 && (courses[0]?.repeats.length ?? 0) < 2) return '';
  const rows = courses.slice(0, linesShown).map((course) => row(result, course));
  const more = courses.length > linesShown ? `<p>And ${courses.length - linesShown} more lines.</p>` : '';
  return `<section id="line-by-line"><h2>Line by line</h2>
<p class="note">One bar a repeat: the taller, the more even and complete. A weak repeat is hollow with a cross over it.</p>
<div class="scroll" tabindex="0" role="region" aria-label="Line by line"><table>
<thead><tr><th scope="col">Line</th><th scope="col">Repeats</th><th scope="col">How it went</th>
<th scope="col" class="number">Timing spread</th><th scope="col" class="number">Accents above taps</th></tr></thead>
<tbody>${rows.join('')}</tbody></table></div>${more}</section>`;
}

function row(result: TakeResult, course: LineCourse): string {
  const { line, repeats } = course;
  const label = outsideText(result.sheet.lines[line]!.label, 60);
  const figure = (id: string) => {
    const found = result.measures.find(
      ({ id: of, scope }) => of === id && scope.line === line && Object.keys(scope).length === 1,
    );
    const only = result.sheet.lines.length === 1 ? result.measures.find((m) => m.id === id) : undefined;
    const measure = found ?? only;
    return measure?.outcome.state === 'measured'
      ? formatFigure(measure.outcome.value, measure.unit)
      : '<span class="reason">not told</span>';
  };
  return `<tr><th scope="row">${line + 1}. ${label}</th><td>${bars(repeats)}</td><td>${courseWords(course)}</td>
<td class="number">${figure('timing-spread')}</td><td class="number">${figure('accent-to-tap-ratio')}</td></tr>`;
}

function bars(repeats: readonly RepeatFigures[]): string {
  if (repeats.length === 0) return '–';
  const shown = repeats.slice(0, barsShown).map((figures) => ({
    score: figures.score,
    weak: isWeak(figures),
    words: `repeat ${figures.repeat + 1}: ${repeatWords(figures)}`,
  }));
  return scoreBars(shown, barStep);
}

function repeatWords({ score, missed, extra }: RepeatFigures): string {
  const faults = [
    ...(missed > 0 ? [`${missed} missed`] : []),
    ...(extra > 0 ? [`${extra} too many`] : []),
    score === null ? 'too short to tell' : `${shownScore(score)} of 100`,
  ];
  return faults.join(', ');
}

/**
 * What became of a line, in words.
 *
 * @example courseWords(course) // 'Held through all 4 repeats.'
 */
export function courseWords({ repeats, asked, brokeFrom, causes }: LineCourse): string {
  if (repeats.length === 0) return 'Not played, or not found in the recording.';
  const reached = repeats.length < asked ? ` ${repeats.length} of ${asked} repeats were reached.` : '';
  const weak = repeats.filter(isWeak);
  if (repeats.every(({ score }) => score === null)) return `Too short to tell.${reached}`;
  if (weak.length === 0) {
    const times =
      repeats.length === 1
        ? ''
        : ` through ${repeats.length === 2 ? 'both' : `all ${repeats.length}`} repeats`;
    return `Held${times}.${reached}`;
  }
  const why = [
    ...(causes.missed > 0 ? [`${causes.missed} missed`] : []),
    ...(causes.extra > 0 ? [`${causes.extra} too many`] : []),
    ...(causes.missed + causes.extra === 0 && causes.unevenShare !== null
      ? [`strokes up to ${causes.unevenShare.toFixed(0)} % of a partial apart from even`]
      : []),
  ].join(', ');
  const numbers = weak.map(({ repeat }) => repeat + 1);
  const where =
    brokeFrom === null
      ? `Weak in repeat ${numbers.slice(0, 4).join(', ')}${numbers.length > 4 ? ' and more' : ''}`
      : brokeFrom === 0
        ? 'Weak from the start'
        : `Held, then broke from repeat ${brokeFrom + 1} on`;
  return `${where}${why === '' ? '' : `: ${why}`}.${reached}`;
}
