import type { TakeResult } from '../core/result/take-result.ts';
import { drawnPart } from './drawn-part.ts';
import { embedJson } from './embed-json.ts';
import { packPart } from './packed-part.ts';
import { pageHead } from './page-head.ts';
import { breakingPoint } from './parts/breaking-point.ts';
import { care } from './parts/care.ts';
import { downloads, type Pack } from './parts/downloads.ts';
import { exercise } from './parts/exercise.ts';
import { figures } from './parts/figures.ts';
import { firstThings } from './parts/first-things.ts';
import { glossary } from './parts/glossary.ts';
import { header, type TakeCaption } from './parts/header.ts';
import { howMeasured } from './parts/how-measured.ts';
import { limits } from './parts/limits.ts';
import { lineTable } from './parts/line-table.ts';
import { listening, listeningData, type ReportSound } from './parts/listening.ts';
import { model } from './parts/model.ts';
import { notGradable } from './parts/not-gradable.ts';
import type { ReportImages } from './parts/picture.ts';
import { pictures } from './parts/pictures.ts';
import { scores } from './parts/scores.ts';
import { strokeTable } from './parts/stroke-table.ts';
import { reportStyleText } from './report-style-text.ts';
import { safeScript } from './safe-script.ts';
import { type Sha256, securityPolicy } from './security-policy.ts';
import { takeFiles } from './take-files.ts';
import { wholeFiguresHtml } from './whole-figures-html.ts';

/** Strokes up to which the script has the take's columns as they are … */
export const strokesEmbedded = 2000;
/** … and up to which it has them packed; a longer take keeps its images. */
export const strokesPacked = 20_000;

/** Characters that a report keeps within, its sound aside: mail programs show such a file at once. */
const reportLimit = 600_000;

/** What a report is made of besides the result. */
export interface ReportParts {
  readonly images: ReportImages;
  /** Text of the script that draws the pictures, or null for a report without one. */
  readonly clientScript: string | null;
  /** Text of the script that plays the sound; used only with sound. */
  readonly listeningScript?: string;
  /** Text of the script that saves the files packed in the report, and what packs them; no files without. */
  readonly files?: { readonly script: string; readonly pack: Pack };
  /** `@font-face` rules with the type as data URIs, or nothing. */
  readonly fontFaces: string;
  readonly sha256: Sha256;
  readonly caption?: TakeCaption;
  /** The take's sound. */
  readonly sound?: ReportSound;
}

/**
 * The report on a take as one HTML file that loads nothing: questions and pictures, scores, figures, what to do next
 * and what can't be told. Every text from outside is escaped. A take without a grade gets the reason instead.
 *
 * @example reportHtml(result, { images: {}, clientScript: null, fontFaces: '', sha256 }) // '<!doctype html>…'
 */
export function reportHtml(result: TakeResult, parts: ReportParts): string {
  const style = reportStyleText(parts.fontFaces, parts.sound !== undefined);
  const graded = result.grading.state === 'graded';
  const drawn = graded && parts.clientScript !== null ? drawnData(result, parts.files?.pack) : '';
  const { sound, listeningScript } = parts;
  const scripts = [
    ...(drawn !== '' && parts.clientScript !== null ? [safeScript(parts.clientScript)] : []),
    ...(graded && parts.files !== undefined ? [safeScript(parts.files.script)] : []),
    ...(sound !== undefined && listeningScript !== undefined ? [safeScript(listeningScript)] : []),
  ];
  const heard = sound === undefined ? '' : listeningData(result, sound);
  const body = graded ? gradedBody(result, parts) : ungradedBody(result, parts);
  const held = [body, style, drawn, ...scripts].reduce((sum, { length }) => sum + length, 0);
  const files =
    graded && parts.files !== undefined
      ? downloads(takeFiles(result), parts.files.pack, reportLimit - held)
      : '';
  return wholeFiguresHtml(`${pageHead({ title: result.sheet.title || 'Practice take', kind: 'report', style, policy: securityPolicy(style, scripts, parts.sha256, sound?.place === 'beside') })}
<body>
<main>
${header(result, parts.caption ?? {})}
${body}
${files}
<footer>This file holds the whole report${sound?.place === 'beside' ? ' but its sound' : ''}. Opening it loads nothing from elsewhere and sends nothing anywhere.</footer>
</main>
${drawn}${heard}${scripts.map((script) => `<script>${script}</script>\n`).join('')}</body>
</html>
`);
}

/** What the script draws from; empty for a take too long for it. */
function drawnData(result: TakeResult, pack: Pack | undefined): string {
  const strokes = result.strokes.time.length;
  const packs = strokes > strokesEmbedded;
  if (strokes > strokesPacked || (packs && pack === undefined)) return '';
  const json = embedJson(packPart(drawnPart(result)));
  return packs
    ? `<script type="text/plain" id="drawn-part" data-coding="gzip">${pack!(json)}</script>\n`
    : `<script type="application/json" id="drawn-part">${json}</script>\n`;
}

function gradedBody(result: TakeResult, { images, sound }: ReportParts): string {
  return [
    '<div class="first-view">',
    scores(result, images),
    firstThings(result, sound !== undefined),
    exercise(result),
    limits(result),
    '</div>',
    sound === undefined ? '' : listening(result, sound),
    breakingPoint(result),
    lineTable(result),
    model(result),
    pictures(result, images),
    care(),
    figures(result),
    strokeTable(result, sound !== undefined),
    glossary(result),
    howMeasured(result),
  ].join('\n');
}

function ungradedBody(result: TakeResult, { sound }: ReportParts): string {
  const reason = result.grading.state === 'not-gradable' ? result.grading.reason : { code: '', facts: {} };
  const heard = sound === undefined ? '' : listening(result, sound);
  return [notGradable(reason), heard, exercise(result), limits(result), care()].join('\n');
}
