import { clockTime } from '../../charts/clock-time.ts';
import { dimensionName, scoreWords } from '../../core/result/names.ts';
import { sentence } from '../../core/result/sentences.ts';
import { escapeHtml, outsideText } from '../escape-html.ts';
import { pageHead } from '../page-head.ts';
import { care } from '../parts/care.ts';
import { reportStyleText } from '../report-style-text.ts';
import { likelyScore } from '../score-mark.ts';
import { type Sha256, securityPolicy } from '../security-policy.ts';
import { sessionStyle } from '../session-style.ts';
import { wholeFiguresHtml } from '../whole-figures-html.ts';
import { countsInWords } from './counts-in-words.ts';
import type { FolderResult, FolderTake, TakeFigures } from './folder-result.ts';

interface FolderPageParts {
  readonly title: string;
  readonly fontFaces: string;
  readonly sha256: Sha256;
}

/** What differs from the page before a session's reports. */
const folderStyle = `
.session-takes th[scope=col]{overflow-wrap:normal}
.session-takes th[scope=row] .reason{display:block;font-weight:400}
`;

/**
 * The page that stands before the reports of many recordings: each with its scores, what to work on first and a link to
 * its report; and what couldn't be graded, with the reason. One file that loads nothing.
 *
 * @example folderHtml(result, { title: 'Tuesday class', fontFaces: '', sha256 }) // '<!doctype html>…'
 */
export function folderHtml(result: FolderResult, { title, fontFaces, sha256 }: FolderPageParts): string {
  const style = reportStyleText(fontFaces, false) + sessionStyle + folderStyle;
  const shown = result.takes.filter(({ figures }) => figures !== null);
  const unread = result.takes.filter(({ figures }) => figures === null);
  return wholeFiguresHtml(`${pageHead({ title, kind: 'takes', style, policy: securityPolicy(style, [], sha256) })}
<body>
<main>
<header><p class="kind">Takes of a folder, one by one</p>
<h1>${outsideText(title)}</h1>
<p>${countsInWords(result.counts)}</p></header>
<section id="takes"><h2>Takes by name</h2>
${shown.length === 0 ? '<p>None of the recordings could be graded.</p>' : takeTable(shown)}</section>
${unread.length === 0 ? '' : faultList(unread)}
${care()}
<footer>This page and the reports beside it load nothing from elsewhere and send nothing anywhere. Keep them in one folder.</footer>
</main>
</body>
</html>
`);
}

function takeTable(takes: readonly FolderTake[]): string {
  const rows = takes.map(({ recording, report, figures }, i) => {
    const { exercise, duration, overall, attention, noGrade } = figures!;
    const score =
      overall === null
        ? `<span class="reason">${noGrade === null ? 'too few strokes for a score' : escapeHtml(sentence(noGrade))}</span>`
        : likelyScore(overall);
    const link =
      report === null
        ? '–'
        : `<a href="${escapeHtml(report.split('/').map(encodeURIComponent).join('/'))}">Open the report<span class="sr"> on take ${i + 1}</span></a>`;
    return `<tr><td data-name="at">${clockTime(duration)}</td>
<th scope="row">${outsideText(recording, 120)}<span class="reason">${outsideText(exercise, 100)}</span></th>
<td data-name="score">${score}</td>
<td data-name="how">${[weakDimensions(figures!), escapeHtml(attention[0]?.sentence ?? '')].filter(Boolean).join(' ')}</td>
<td data-name="report">${link}</td></tr>`;
  });
  return `<table class="session-takes"><thead><tr><th scope="col">Length</th><th scope="col">Recording and exercise</th>
<th scope="col">Score</th><th scope="col">Look at this first</th><th scope="col">Report</th></tr></thead>
<tbody>${rows.join('')}</tbody></table>`;
}

/** What isn't secure, the words first. */
function weakDimensions({ dimensions }: TakeFigures): string {
  const named = (['not-yet', 'nearly'] as const).flatMap((word) => {
    const names = dimensions.filter(({ score }) => score.word === word).map(({ id }) => dimensionName(id));
    return names.length === 0 ? [] : [`${names.join(', ')}: ${scoreWords[word]}.`];
  });
  return named.map(escapeHtml).join(' ');
}

function faultList(takes: readonly FolderTake[]): string {
  const items = takes.map(
    ({ recording, fault }) =>
      `<li><strong>${outsideText(recording, 120)}</strong><span class="reason">${outsideText(fault ?? '', 400)}</span></li>`,
  );
  return `<section id="faults"><h2>What couldn't be graded</h2><ul class="session-lines">${items.join('')}</ul></section>`;
}
