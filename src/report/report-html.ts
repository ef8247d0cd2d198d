import type { TakeResult } from '../core/result/take-result.ts';
import { drawnPart } from './drawn-part.ts';
import { embedJson } from './embed-json.ts';
import { escapeHtml } from './escape-html.ts';
import { care } from './parts/care.ts';
import { exercise } from './parts/exercise.ts';
import { figures } from './parts/figures.ts';
import { firstThings } from './parts/first-things.ts';
import { glossary } from './parts/glossary.ts';
import { header, type TakeCaption } from './parts/header.ts';
import { limits } from './parts/limits.ts';
import { notGradable } from './parts/not-gradable.ts';
import type { ReportImages } from './parts/picture.ts';
import { pictures } from './parts/pictures.ts';
import { scores } from './parts/scores.ts';
import { strokeTable } from './parts/stroke-table.ts';
import { type Sha256, securityPolicy } from './security-policy.ts';
import { reportStyle } from './style.ts';

/** Strokes up to which the pictures can be drawn anew by the script; a longer take keeps its images. */
export const strokesEmbedded = 900;

/** What a report is made of besides the result. */
export interface ReportParts {
  readonly images: ReportImages;
  /** Text of the client script, or null for a report without one. */
  readonly clientScript: string | null;
  /** `@font-face` rules with the type as data URIs, or nothing. */
  readonly fontFaces: string;
  readonly sha256: Sha256;
  readonly caption?: TakeCaption;
  /** The take's sound as a data URI. */
  readonly sound?: string;
}

/**
 * The report on a take as one HTML file that loads nothing: questions and pictures, scores, figures, what to do next
 * and what can't be told. Every text from outside is escaped. A take without a grade gets the reason instead.
 *
 * @example reportHtml(result, { images: {}, clientScript: null, fontFaces: '', sha256 }) // '<!doctype html>…'
 */
export function reportHtml(result: TakeResult, parts: ReportParts): string {
  const style = reportStyle({ fontFaces: parts.fontFaces });
  const graded = result.grading.state === 'graded';
  const scripted = graded && result.strokes.time.length <= strokesEmbedded;
  const wanted = parts.clientScript !== null && (scripted || parts.sound !== undefined);
  const script = wanted ? scriptText(parts.clientScript) : null;
  const sound =
    parts.sound === undefined
      ? ''
      : `<audio id="sound" controls preload="metadata" src="${escapeHtml(parts.sound)}"></audio>`;
  const body = graded ? gradedBody(result, parts) : ungradedBody(result);
  const data =
    script !== null && scripted
      ? `<script type="application/json" id="drawn-part">${embedJson(drawnPart(result))}</script>\n`
      : '';
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${escapeHtml(securityPolicy(style, script, parts.sha256))}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${escapeHtml(result.sheet.title.slice(0, 100) || 'Practice take')} – report</title>
<style>${style}</style>
</head>
<body>
<main>
${header(result, parts.caption ?? {})}
${sound}
${body}
<footer>This file holds the whole report. Opening it loads nothing from elsewhere and sends nothing anywhere.</footer>
</main>
${data}${script === null ? '' : `<script>${script}</script>\n`}</body>
</html>
`;
}

function gradedBody(result: TakeResult, { images, sound }: ReportParts): string {
  return [
    scores(result, images),
    firstThings(result, sound !== undefined),
    exercise(result),
    pictures(result, images),
    limits(result),
    care(),
    figures(result),
    strokeTable(result),
    glossary(),
  ].join('\n');
}

function ungradedBody(result: TakeResult): string {
  const reason = result.grading.state === 'not-gradable' ? result.grading.reason : { code: '', facts: {} };
  return [notGradable(reason), exercise(result), limits(result), care()].join('\n');
}

/** The bundle, made safe to stand in a script element; its digest is taken of this text. */
function scriptText(bundle: string | null): string {
  return (bundle ?? '').replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');
}
