import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Sheet } from '../../core/exercise/sheet.ts';
import type { FolderTake } from '../../report/folder/folder-result.ts';
import type { TakeJob, TakeOutputs } from './take-job.ts';

/** What a result was made from; where all of it is the same, the result would be. */
export interface MadeFrom {
  readonly program: string;
  /** SHA-256 of the recording, and of what was asked: sheet, rubric and options. */
  readonly recording: string;
  readonly asked: string;
}

interface GradedNote {
  readonly madeFrom: MadeFrom;
  readonly take: FolderTake;
}

export function madeFrom(job: TakeJob, sheet: Sheet, recording: string): MadeFrom {
  const { rubric, discomfort, sound, program } = job;
  const asked = JSON.stringify({ sheet, rubric, discomfort, sound });
  return { program, recording, asked: createHash('sha256').update(asked).digest('hex') };
}

/** Where the note on a take's outputs stands. */
export const notePath = ({ folder, name }: TakeOutputs): string => join(folder, '.graded', `${name}.json`);

export const noteText = (note: GradedNote): string => `${JSON.stringify(note)}\n`;

/** The take as an earlier run left it, if it was made from the same and its outputs are still there. */
export async function earlierTake(outputs: TakeOutputs, from: MadeFrom): Promise<FolderTake | null> {
  let note: Partial<GradedNote> | null;
  try {
    note = JSON.parse(readFileSync(notePath(outputs), 'utf8'));
  } catch {
    return null;
  }
  if (JSON.stringify(note?.madeFrom) !== JSON.stringify(from)) return null;
  const { isFolderTake } = await import('../../report/folder/is-folder-take.ts');
  const take: unknown = note?.take;
  if (!isFolderTake(take)) return null;
  const there = [take.report, take.result].every(
    (file) => file !== null && existsSync(join(outputs.folder, file)),
  );
  return there ? { ...take, earlier: true } : null;
}
