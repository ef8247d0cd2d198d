import type { Sheet } from '../../core/exercise/sheet.ts';
import type { Rubric } from '../../core/scoring/rubric.ts';
import type { FolderTake } from '../../report/folder/folder-result.ts';

/** One recording to grade, as it goes to a worker. */
export interface TakeJob {
  readonly path: string;
  readonly shown: string;
  /** What was played: the sheet for all, or null where none was named; one beside the recording goes before it. */
  readonly sheet: Sheet | null;
  readonly rubric: Rubric;
  readonly discomfort: boolean;
  /** Version of the program. */
  readonly program: string;
  /** Where report, result and the note of what they were made from go; null without a folder for them. */
  readonly outputs: TakeOutputs | null;
  readonly sound: boolean;
  /** Grade it even where nothing has changed. */
  readonly again: boolean;
}

export interface TakeOutputs {
  readonly folder: string;
  /** Name of report and result without their endings, as seen from the folder. */
  readonly name: string;
}

/** A file for the one who writes; workers write nothing. */
export interface FileToWrite {
  readonly path: string;
  readonly contents: string | Uint8Array;
}

/** What became of a job. */
export interface TakeAnswer {
  readonly take: FolderTake;
  /** In the order in which they have to be written: the note that all is there comes last. */
  readonly files: readonly FileToWrite[];
  /** What else has to be told. */
  readonly notes: readonly string[];
}
