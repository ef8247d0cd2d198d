import { createHash } from 'node:crypto';
import type { SessionResult } from '../core/session/session-result.ts';
import { reportFonts } from './report-fonts.ts';
import { sessionHtml } from './session-html.ts';

/**
 * The page before a session's reports as the text of one HTML file; `reports` are the reports' names. Writes no file.
 */
export async function writeSessionPage(session: SessionResult, reports: readonly string[]): Promise<string> {
  return sessionHtml(session, {
    reports,
    fontFaces: await reportFonts(),
    sha256: (text) => createHash('sha256').update(text, 'utf8').digest('base64'),
  });
}
