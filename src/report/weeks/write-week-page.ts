import type { WeekPicture } from '../../charts/weeks/week-picture.ts';
import { PicturesUnavailable } from '../chart-image.ts';
import { readScript } from '../read-script.ts';
import { reportFonts } from '../report-fonts.ts';
import { sha256Base64 } from '../sha256-base64.ts';
import { weekImages } from './week-images.ts';
import type { PageParts } from './week-page.ts';

/**
 * A page on several takes as the text of one file; where still pictures can't be drawn here, it draws them when it is
 * opened. Writes no file. Throws `ReportScriptMissing` before a build.
 */
export async function writeWeekPage(
  page: (parts: PageParts) => string,
  pictures: readonly WeekPicture[],
): Promise<string> {
  const images = await weekImages(pictures).catch((error: unknown) => {
    if (error instanceof PicturesUnavailable) return {};
    throw error;
  });
  return page({
    images,
    fontFaces: await reportFonts(),
    script: await readScript('report-weeks.js'),
    sha256: sha256Base64,
  });
}
