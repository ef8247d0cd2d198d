import { createHash } from 'node:crypto';
import { reportFonts } from '../report-fonts.ts';
import { folderHtml } from './folder-html.ts';
import type { FolderResult } from './folder-result.ts';

/** The page before the reports of many recordings as the text of one HTML file. Writes no file. */
export async function writeFolderPage(result: FolderResult, title: string): Promise<string> {
  return folderHtml(result, {
    title,
    fontFaces: await reportFonts(),
    sha256: (text) => createHash('sha256').update(text, 'utf8').digest('base64'),
  });
}
