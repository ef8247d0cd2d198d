import { basename } from 'node:path';
import type { TakeResult } from '../core/result/take-result.ts';
import type { Source } from '../core/signal/source.ts';
import { mp3BytesASecond, mp3Of, nearestRate } from '../formats/write-mp3.ts';
import { soundPrint } from '../report/listening/sound-print.ts';
import type { ReportSound } from '../report/parts/listening.ts';

/**
 * Bytes of MP3 inside a report: with the third that base64 adds it goes by mail, which takes 20 MB. Common practice.
 */
const mostInside = 7_200_000;

/** s of sound that go into a report; a longer recording's sound becomes a file beside it. */
export const longestInside = mostInside / mp3BytesASecond;

export interface SoundForReport {
  readonly sound: ReportSound;
  /** The file that has to be written beside the report, if any. */
  readonly file: { readonly path: string; readonly bytes: Uint8Array } | null;
}

/**
 * The sound of a take for its report, which is written to `report`: MP3 inside, or beside it where it is long. Null for
 * a long one whose report goes to the screen, beside which nothing can lie.
 *
 * @example (await soundForReport(source, result, 'monday.html'))!.sound.place // 'inside'
 */
export async function soundForReport(
  source: Source,
  { strokes }: TakeResult,
  report: string,
): Promise<SoundForReport | null> {
  const inside = source.length <= longestInside * source.sampleRate;
  if (!inside && report === '-') return null;
  const bytes = await mp3Of(source);
  if (!inside) {
    const path = `${report.replace(/\.html?$/i, '')}-sound.mp3`;
    return { sound: { place: 'beside', file: basename(path) }, file: { path, bytes } };
  }
  const uri = `data:audio/mpeg;base64,${Buffer.from(bytes).toString('base64')}`;
  const print = soundPrint(source, strokes);
  return { sound: { place: 'inside', uri, sampleRate: nearestRate(source.sampleRate), print }, file: null };
}
