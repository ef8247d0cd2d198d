import type { SessionResult } from '../core/session/session-result.ts';
import { reportFonts } from './report-fonts.ts';
import { sessionHtml } from './session-html.ts';
import { sha256Base64 } from './sha256-base64.ts';

/**
 * The page before a session's reports as the text of one HTML file; `reports` are the reports' names. Writes no file.
 */
export async function writeSessionPage(session: SessionResult, reports: readonly string[]): Promise<string> {
  return sessionHtml(session, {
    reports,
    fontFaces: await reportFonts(),
    sha256: sha256Base64,
  });
}
