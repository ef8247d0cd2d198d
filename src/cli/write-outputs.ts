import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { TakeResult } from '../core/result/take-result.ts';
import type { Source } from '../core/signal/source.ts';
import { csv } from '../formats/csv.ts';
import { outputFaultSentence } from '../formats/output-fault-sentence.ts';
import { strokesTable } from '../formats/strokes-table.ts';
import { signalsTold } from '../formats/whole-before-signal.ts';
import { writeAtomically } from '../formats/write-atomically.ts';
import { CommandFault } from './command-fault.ts';
import type { CommandOutput } from './command-output.ts';
import type { FileOutputs } from './output-paths.ts';

interface WantedOutputs {
  readonly files: FileOutputs;
  /** Folder for one PNG a picture. */
  readonly pictures: string | undefined;
  /** The recording whose sound goes with the report, or null for a report without sound. */
  readonly sound: Source | null;
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
  const put = async (path: string, what: string, contents: string) => {
    if (path === '-') return output.stdout(contents);
    write(path, contents);
    output.stderr(`${what} written to ${path}\n`);
    await signalsTold();
  };
  if (files.json !== undefined) await put(files.json, 'Result', `${JSON.stringify(result)}\n`);
  if (files.csv !== undefined) await put(files.csv, 'Table of strokes', csv(strokesTable(result)));
  if (files.report !== undefined)
    await put(files.report, 'Report', await report(result, files.report, sound, output));
  if (pictures !== undefined) await drawPictures(result, pictures, output);
}

function write(path: string, contents: string | Uint8Array): void {
  const fault = writeAtomically(path, contents);
  if (fault !== undefined) throw new CommandFault('fault', outputFaultSentence(path, fault));
}

/** The report's text; what doesn't go inside it is written beside it. */
async function report(
  result: TakeResult,
  path: string,
  source: Source | null,
  output: CommandOutput,
): Promise<string> {
  const { reportContents } = await import('./report-contents.ts');
  const { html, beside, notes } = await reportContents(result, path, source);
  if (beside !== null) write(beside.path, beside.bytes);
  for (const note of notes) output.stderr(`${note}\n`);
  return html;
}

async function drawPictures(result: TakeResult, folder: string, output: CommandOutput): Promise<void> {
  if (result.grading.state !== 'graded') {
    output.stderr('No pictures were drawn, as the take has no grade.\n');
    return;
  }
  const { reportImages, sharpImages } = await import('../report/report-images.ts');
  const images = Object.entries(await reportImages(result, sharpImages));
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
