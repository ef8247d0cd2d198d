import { signalsTold } from '../../formats/whole-before-signal.ts';
import type { FolderTake } from '../../report/folder/folder-result.ts';
import type { CommandOutput } from '../command-output.ts';
import { statusLine } from '../progress-line.ts';
import { printable } from '../text-layout.ts';
import { gradeAtOnce } from './grade-at-once.ts';
import { writeIntoFolder } from './report-folder.ts';
import type { TakeJob } from './take-job.ts';

const steps = 20;

/** How far a folder has come: `■■■■■······· 3 of 12 takes`. */
export function folderProgress(done: number, all: number): string {
  const filled = Math.round((done / all) * steps);
  return `${'■'.repeat(filled)}${'·'.repeat(steps - filled)} ${Math.floor(done)} of ${all} takes`;
}

/**
 * Grades the jobs side by side and writes what comes of each as it comes, so that whatever stops the program leaves
 * what is done. On a terminal a line shows how far it has come, and Ctrl-C is answered with a sentence.
 */
export async function takesDone(
  jobs: readonly TakeJob[],
  workers: number,
  output: CommandOutput,
): Promise<FolderTake[]> {
  const takes: FolderTake[] = [];
  const told: string[] = [];
  let count = 0;
  const line = statusLine(process.stderr, () => performance.now());
  const stopped = () => {
    line.end();
    const kept = jobs[0]?.outputs === null ? '' : ' The same command goes on from there.';
    output.stderr(`Stopped: ${count} of ${jobs.length} takes are done.${kept}\n`);
    process.off('SIGINT', stopped);
    process.kill(process.pid, 'SIGINT');
  };
  process.on('SIGINT', stopped);
  try {
    await gradeAtOnce(jobs, {
      workers,
      tell: (done) => line.show(() => folderProgress(done, jobs.length)),
      take: async ({ take, files, notes }, index) => {
        for (const file of files) {
          writeIntoFolder(file);
          await signalsTold();
        }
        takes[index] = take;
        count += 1;
        for (const note of notes) told.push(`${printable(take.recording)}: ${note}\n`);
      },
    });
  } finally {
    process.off('SIGINT', stopped);
    line.end();
    for (const note of told) output.stderr(note);
  }
  return takes;
}
