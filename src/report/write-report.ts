import { gzipSync } from 'node:zlib';
import type { TakeResult } from '../core/result/take-result.ts';
import type { TakeCaption } from './parts/header.ts';
import type { ReportSound } from './parts/listening.ts';
import { readScript } from './read-script.ts';
import { reportFonts } from './report-fonts.ts';
import { reportHtml } from './report-html.ts';
import { reportImages } from './report-images.ts';
import { sha256Base64 } from './sha256-base64.ts';

interface ReportOptions {
  readonly caption?: TakeCaption;
  /** The take's sound. */
  readonly sound?: ReportSound;
  /** False for a report whose pictures need scripts, where the drawing library is missing. */
  readonly withImages?: boolean;
  /**
   * Texts of the scripts; read from the built files when left out. With a client script alone there are no files to
   * save.
   */
  readonly clientScript?: string;
  readonly listeningScript?: string;
  readonly filesScript?: string;
}

/**
 * The whole report on a take as the text of one HTML file, with images, type and script inside. Writes no file.
 * Throws `PicturesUnavailable` where images are wanted and the drawing library is missing, `ReportScriptMissing` before
 * a build.
 */
export async function writeReport(result: TakeResult, options: ReportOptions = {}): Promise<string> {
  const { caption, sound, withImages = true } = options;
  const [images, fontFaces, clientScript, listeningScript, filesScript] = await Promise.all([
    withImages ? reportImages(result) : {},
    reportFonts(),
    options.clientScript ?? readScript('report-client.js'),
    sound === undefined ? '' : (options.listeningScript ?? readScript('report-listening.js')),
    options.filesScript ?? (options.clientScript === undefined ? readScript('report-files.js') : null),
  ]);
  return reportHtml(result, {
    images,
    fontFaces,
    clientScript,
    ...(filesScript === null ? {} : { files: { script: filesScript, pack } }),
    sha256: sha256Base64,
    ...(caption === undefined ? {} : { caption }),
    ...(sound === undefined ? {} : { sound, listeningScript }),
  });
}

const pack = (contents: string | Uint8Array) => gzipSync(contents, { level: 9 }).toString('base64');
