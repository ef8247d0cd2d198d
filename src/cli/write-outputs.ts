import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { TakeResult } from '../core/result/take-result.ts';
import { csv } from '../formats/csv.ts';
import { outputFaultSentence } from '../formats/output-fault-sentence.ts';
import { writeAtomically } from '../formats/write-atomically.ts';
import { CommandFault } from './command-fault.ts';
import type { CommandOutput } from './command-output.ts';
import type { FileOutputs } from './output-paths.ts';
import { strokesTable } from './strokes-table.ts';

export interface WantedOutputs {
  readonly files: FileOutputs;
  /** Folder for one PNG a picture. */
  readonly pictures: string | undefined;
  /** The take's sound for the report, as a data URI. */
  readonly sound: string | null;
}

/**
 * Writes a result in every form that is wanted; what goes to the screen goes to stdout, what was written where is told
 * on stderr. Throws a fault where a file can't be written; those written before it stay.
 */
export async function writeOutputs(
  result: TakeResult,
  { files, pictures, sound }: WantedOutputs,
  output: CommandOutput,
): Promise<void> {
  const put = (path: string, what: string, contents: string) => {
    if (path === '-') return output.stdout(contents);
    write(path, contents);
    output.stderr(`${what} written to ${path}\n`);
  };
  if (files.json !== undefined) put(files.json, 'Result', `${JSON.stringify(result)}\n`);
  if (files.csv !== undefined) put(files.csv, 'Table of strokes', csv(strokesTable(result)));
  if (files.report !== undefined) put(files.report, 'Report', await report(result, sound, output));
  if (pictures !== undefined) await drawPictures(result, pictures, output);
}

function write(path: string, contents: string | Uint8Array): void {
  const fault = writeAtomically(path, contents);
  if (fault !== undefined) throw new CommandFault('fault', outputFaultSentence(path, fault));
}

/** The report; without still pictures, which the page can do without, where they can't be drawn here. */
async function report(result: TakeResult, sound: string | null, output: CommandOutput): Promise<string> {
  const { writeReport } = await import('../report/write-report.ts');
  const { PicturesUnavailable } = await import('../report/chart-image.ts');
  const options = sound === null ? {} : { sound };
  try {
    return await writeReport(result, options);
  } catch (error) {
    if (!(error instanceof PicturesUnavailable)) throw error;
    output.stderr(`${error.message} The report draws its pictures when it is opened.\n`);
    return writeReport(result, { ...options, withImages: false });
  }
}

async function drawPictures(result: TakeResult, folder: string, output: CommandOutput): Promise<void> {
  if (result.grading.state !== 'graded') {
    output.stderr('No pictures were drawn, as the take has no grade.\n');
    return;
  }
  const { reportImages } = await import('../report/report-images.ts');
  const images = Object.entries(await reportImages(result));
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    const reason = (error as Error).message;
    const sentence = outputFaultSentence(folder, { code: 'write-failed', facts: { reason } });
    throw new CommandFault('fault', sentence);
  }
  for (const [id, uri] of images)
    write(join(folder, `${id}.png`), Buffer.from(uri.slice(uri.indexOf(',') + 1), 'base64'));
  output.stderr(`${images.length} pictures written to ${folder}\n`);
}
