import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Sheet } from '../../core/exercise/sheet.ts';
import type { Rubric } from '../../core/scoring/rubric.ts';
import { rubrics } from '../../core/scoring/rubrics/index.ts';
import type { WorkTold } from '../../core/signal/work-told.ts';
import type { FolderTake } from '../../report/folder/folder-result.ts';
import { takeFigures } from '../../report/folder/take-figures.ts';
import { sheetOfFile } from '../asked-sheet.ts';
import { CommandFault } from '../command-fault.ts';
import { openPlayed, type Played } from '../open-played.ts';
import { reportContents } from '../report-contents.ts';
import { earlierTake, type MadeFrom, madeFrom, notePath, noteText } from './graded-note.ts';
import type { FileToWrite, TakeAnswer, TakeJob } from './take-job.ts';

const sheetEndings = ['.sheet', '.musicxml', '.mxl'];

/**
 * Grades one recording of a folder, or finds that an earlier run has. Writes nothing: the files come with the answer.
 * Never throws for what a recording or a sheet may hold; the fault is in the answer.
 */
export async function gradeJob(job: TakeJob, tell: WorkTold): Promise<TakeAnswer> {
  const blank = { recording: job.shown, earlier: false, figures: null, report: null, result: null };
  const notes: string[] = [];
  try {
    const sheet = sheetFor(job, notes);
    const recording = await openPlayed(job.path);
    try {
      const from = madeFrom(job, sheet, recording.sha256());
      const earlier = job.outputs === null || job.again ? null : await earlierTake(job.outputs, from);
      if (earlier !== null) return { take: earlier, files: [], notes: [] };
      return await graded(job, { sheet, recording, from, tell, notes });
    } finally {
      recording.close();
    }
  } catch (error) {
    const fault = error instanceof Error ? error.message : String(error);
    const state = error instanceof CommandFault ? 'unreadable' : 'failed';
    return { take: { ...blank, state, fault }, files: [], notes };
  }
}

/** The sheet beside the recording, else the one for all. */
function sheetFor({ path, shown, sheet }: TakeJob, notes: string[]): Sheet {
  const stem = path.replace(/\.[^./\\]*$/, '');
  const beside = sheetEndings.map((ending) => stem + ending).find((file) => existsSync(file));
  if (beside !== undefined) {
    const read = sheetOfFile(beside);
    notes.push(...read.notes);
    return read.sheet;
  }
  if (sheet !== null) return sheet;
  const wanted = shown.replace(/\.[^./]*$/, sheetEndings[0]!);
  throw new CommandFault(
    'unreadableInput',
    `What was played in "${shown}" isn't said. Put a sheet "${wanted}" beside it, or name one for all with --sheet.`,
  );
}

/** A shipped rubric is known by being itself, which it loses on its way into a thread. */
const asShipped = (rubric: Rubric): Rubric =>
  rubrics.find((shipped) => JSON.stringify(shipped) === JSON.stringify(rubric)) ?? rubric;

async function graded(
  { shown, rubric, discomfort, outputs, sound }: TakeJob,
  {
    sheet,
    recording,
    from,
    tell,
    notes,
  }: {
    readonly sheet: Sheet;
    readonly recording: Played;
    readonly from: MadeFrom;
    readonly tell: WorkTold;
    readonly notes: string[];
  },
): Promise<TakeAnswer> {
  const { source } = recording;
  const result = recording.grade(sheet, { rubric: asShipped(rubric), discomfort, tell });
  const take: FolderTake = {
    recording: shown,
    state: result.grading.state,
    earlier: false,
    figures: takeFigures(result),
    fault: null,
    report: outputs === null ? null : `${outputs.name}.html`,
    result: outputs === null ? null : `${outputs.name}.json`,
  };
  if (outputs === null) return { take, files: [], notes };
  const at = (ending: string) => join(outputs.folder, `${outputs.name}${ending}`);
  const report = await reportContents(result, at('.html'), sound ? source : null);
  const files: FileToWrite[] = [
    ...(report.beside === null ? [] : [{ path: report.beside.path, contents: report.beside.bytes }]),
    { path: at('.html'), contents: report.html },
    { path: at('.json'), contents: `${JSON.stringify(result)}\n` },
    { path: notePath(outputs), contents: noteText({ madeFrom: from, take }) },
  ];
  return { take, files, notes: [...notes, ...report.notes] };
}
