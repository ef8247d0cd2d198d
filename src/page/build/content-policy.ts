import type { Plugin } from 'vite';
import { reportStyleText } from '../../report/report-style-text.ts';
import { safeScript } from '../../report/safe-script.ts';
import { sha256Base64 } from '../../report/sha256-base64.ts';
import { weekStyleText } from '../../report/weeks/week-style.ts';
import { type ReportPartTexts, readReportParts } from './report-parts.ts';

const digest = (text: string) => `'sha256-${sha256Base64(text)}'`;

const scriptsOf = ({ clientScript, filesScript, listeningScript, weeksScript }: ReportPartTexts) => [
  clientScript,
  filesScript,
  listeningScript,
  weeksScript,
];

/**
 * The page's content security policy (CSP level 3): everything comes from where the page comes from; no text becomes
 * a script. A report shown inside the page stands under this policy too, so the digests of its style and scripts are
 * named.
 */
function pagePolicy(parts: ReportPartTexts): string {
  const scripts = scriptsOf(parts).map(safeScript).map(digest);
  const { fontFaces } = parts;
  const styles = [
    ...[false, true].map((sound) => reportStyleText(fontFaces, sound)),
    weekStyleText(fontFaces),
  ].map(digest);
  return [
    "default-src 'none'",
    `script-src 'self' 'wasm-unsafe-eval' ${scripts.join(' ')}`,
    `style-src 'self' ${styles.join(' ')}`,
    "img-src 'self' data: blob:",
    "font-src 'self' data:",
    "media-src 'self' data: blob:",
    "connect-src 'self'",
    "worker-src 'self'",
    "manifest-src 'self'",
    "base-uri 'none'",
    "form-action 'self'",
  ].join('; ');
}

const first = '<meta charset="utf-8">';

/**
 * Writes the policy into the page, so that it holds on every host; right behind the charset, which a browser looks for
 * in the first 1024 bytes, and before anything that is loaded.
 */
export function contentPolicy(built: string): Plugin {
  return {
    name: 'content-policy',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      async handler(html) {
        if (!html.includes(first)) throw new Error(`The page doesn't begin with ${first}`);
        const policy = pagePolicy(await readReportParts(built));
        const meta = `<meta http-equiv="Content-Security-Policy" content="${policy}">`;
        return html.replace(first, `${first}\n${meta}`);
      },
    },
  };
}
