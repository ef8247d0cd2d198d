import { reportFonts } from '../report-fonts.ts';
import { sha256Base64 } from '../sha256-base64.ts';
import { folderHtml } from './folder-html.ts';
import type { FolderResult } from './folder-result.ts';

/** The page before the reports of many recordings as the text of one HTML file. Writes no file. */
export async function writeFolderPage(result: FolderResult, title: string): Promise<string> {
  return folderHtml(result, {
    title,
    fontFaces: await reportFonts(),
    sha256: sha256Base64,
  });
}
