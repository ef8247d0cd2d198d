import type { TakeResult } from '../core/result/take-result.ts';
import type { Source } from '../core/signal/source.ts';

export interface ReportContents {
  readonly html: string;
  /** The sound, where it is too long to go inside: a file beside the report. */
  readonly beside: { readonly path: string; readonly bytes: Uint8Array } | null;
  /** Sentences on what is left out or lies beside it. */
  readonly notes: readonly string[];
}

/**
 * The report that will stand at `path`, with the sound of `source` if there is one; without still pictures, which the
 * page can do without, where they can't be drawn here. Writes nothing.
 */
export async function reportContents(
  result: TakeResult,
  path: string,
  source: Source | null,
): Promise<ReportContents> {
  const { writeReport } = await import('../report/write-report.ts');
  const { PicturesUnavailable } = await import('../report/chart-image.ts');
  const notes: string[] = [];
  const { longestInside, soundForReport } = await import('./sound-for-report.ts');
  const made = source === null ? null : await soundForReport(source, result, path);
  const long = `The recording is longer than ${longestInside / 60} minutes, so its sound`;
  if (source !== null && made === null)
    notes.push(`${long} isn't in the report. Name a file for the report to have the sound beside it.`);
  const beside = made?.file ?? null;
  if (beside !== null) notes.push(`${long} was written to ${beside.path}; keep it beside the report.`);
  const options = made === null ? {} : { sound: made.sound };
  try {
    return { html: await writeReport(result, options), beside, notes };
  } catch (error) {
    if (!(error instanceof PicturesUnavailable)) throw error;
    notes.push(`${error.message} The report draws its pictures when it is opened.`);
    return { html: await writeReport(result, { ...options, withImages: false }), beside, notes };
  }
}
