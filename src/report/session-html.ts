import { clockTime } from '../charts/clock-time.ts';
import { otherTempoWords } from '../core/progress/other-tempo-words.ts';
import { sentence } from '../core/result/sentences.ts';
import { isTempoAdvice } from '../core/scoring/tempo-advice.ts';
import { lineCourses } from '../core/session/line-course.ts';
import { lineName } from '../core/session/line-name.ts';
import type { LineOfSession, SessionResult, SessionTake } from '../core/session/session-result.ts';
import { escapeHtml, outsideText } from './escape-html.ts';
import { pageHead } from './page-head.ts';
import { care } from './parts/care.ts';
import { courseWords } from './parts/line-table.ts';
import { reportStyleText } from './report-style-text.ts';
import { likelyScore, scoreMark } from './score-mark.ts';
import { type Sha256, securityPolicy } from './security-policy.ts';
import { sessionStyle } from './session-style.ts';
import { wholeFiguresHtml } from './whole-figures-html.ts';

interface SessionPageParts {
  /** File of each take's report, beside this page, in the order of the takes. */
  readonly reports: readonly string[];
  readonly fontFaces: string;
  readonly sha256: Sha256;
}

const times = (n: number) => (n === 1 ? 'once' : n === 2 ? 'twice' : `${n} times`);

/**
 * The page that stands before the reports of a session: what became of each line, every take with its place in the
 * recording and its scores, and a link to each report. One file that loads nothing.
 *
 * @example sessionHtml(session, { reports: ['take-01-line-1.html'], fontFaces: '', sha256 }) // '<!doctype html>…'
 */
export function sessionHtml(
  session: SessionResult,
  { reports, fontFaces, sha256 }: SessionPageParts,
): string {
  const style = reportStyleText(fontFaces, false) + sessionStyle;
  const { sheet, recording, takes, summary, unrecognised } = session;
  const title = sheet.title || 'Practice session';
  const played = summary.lines.filter(({ plays }) => plays.length > 0).length;
  const facts: [string, string][] = [
    ['Recording', `${outsideText(recording.name)}, ${clockTime(recording.duration)} long`],
    ['Lines', `${played} of ${sheet.lines.length} were played`],
    ['Takes', `${takes.length}, each with a report of its own`],
    ...(summary.weakest === null
      ? []
      : [['Weakest line', outsideText(lineName(sheet.lines, summary.weakest))] as [string, string]]),
  ];
  const foreign = unrecognised.map(({ from, to }) => `${clockTime(from)} to ${clockTime(to)}`);
  return wholeFiguresHtml(`${pageHead({ title, kind: 'session', style, policy: securityPolicy(style, [], sha256) })}
<body>
<main>
<header><p class="kind">A practice session, line by line</p>
<h1>${outsideText(title)}</h1>
<dl class="facts">${facts.map(([name, text]) => `<div><dt>${name}</dt><dd>${text}</dd></div>`).join('')}</dl></header>
<section id="lines"><h2>What became of each line</h2>
<ol class="session-lines">${summary.lines.map((line) => lineItem(line, session, reports)).join('')}</ol></section>
<section id="takes"><h2>Takes in the order they were played</h2>
${takes.length === 0 ? '<p>No line of the sheet was found in this recording.</p>' : takeTable(session, reports)}
${foreign.length === 0 ? '' : `<p class="note">Playing that fits no line of the sheet, left out: ${foreign.join(', ')}.</p>`}</section>
${care()}
<footer>This page and the reports beside it load nothing from elsewhere and send nothing anywhere. Keep them in one folder.</footer>
</main>
</body>
</html>
`);
}

function lineItem(
  { line, plays, repeats, asked, score }: LineOfSession,
  session: SessionResult,
  reports: readonly string[],
): string {
  const label = `<strong>${outsideText(lineName(session.sheet.lines, line), 80)}</strong>`;
  if (plays.length === 0) return `<li>${label}<span>Not played.</span></li>`;
  const goes = plays.length === 1 ? '' : ` in ${plays.length} goes`;
  const worth = score === null ? 'too few strokes for a score' : scoreMark(score);
  const broke = plays.flatMap(({ take, brokeFrom }) =>
    brokeFrom === null
      ? []
      : [
          `Broke from time ${brokeFrom + 1} on <a href="${escapeHtml(reports[take]!)}">in the take at ${clockTime(session.takes[take]!.from)}</a>.`,
        ],
  );
  return `<li>${label}<span>${worth}</span>
<span class="reason">Played ${times(repeats)}${goes}, asked ${times(asked)}. ${broke.join(' ')}</span></li>`;
}

function takeTable({ takes, sheet }: SessionResult, reports: readonly string[]): string {
  const rows = takes.map((take, i) => {
    const label = outsideText(lineName(sheet.lines, take.line), 60);
    const overall = take.result.scores?.overall;
    const tempo = otherTempoWords(take.result);
    const score =
      overall === undefined
        ? `<span class="reason">${take.result.grading.state === 'not-gradable' ? escapeHtml(sentence(take.result.grading.reason)) : 'too few strokes for a score'}</span>`
        : likelyScore(overall);
    return `<tr><td data-name="at">${clockTime(take.from)}–${clockTime(take.to)}</td>
<th scope="row">${label}, ${times(take.repeats)}${tempo === '' ? '' : `, ${tempo}`}</th><td data-name="score">${score}</td>
<td data-name="how">${howItWent(take)}</td>
<td data-name="report"><a href="${escapeHtml(reports[i]!)}">Open the report<span class="sr"> on take ${i + 1}</span></a></td></tr>`;
  });
  return `<table class="session-takes"><thead><tr><th scope="col">In the recording</th><th scope="col">Line</th>
<th scope="col">Score</th><th scope="col">How it went</th><th scope="col">Report</th></tr></thead>
<tbody>${rows.join('')}</tbody></table>`;
}

/** The course of the line, and the first thing to work on. */
function howItWent({ result }: SessionTake): string {
  if (result.grading.state !== 'graded') return '–';
  const [course] = lineCourses(result);
  const first = result.advice.find(({ code }) => !isTempoAdvice(code));
  return [
    course === undefined ? '' : courseWords(course),
    first === undefined ? '' : escapeHtml(sentence(first)),
  ]
    .filter((text) => text !== '')
    .join(' ');
}
