import { availableParallelism } from 'node:os';
import { basename, dirname, join, resolve } from 'node:path';
import { Command } from 'commander';
import type { Sheet } from '../core/exercise/sheet.ts';
import type { Rubric } from '../core/scoring/rubric.ts';
import { rubrics } from '../core/scoring/rubrics/index.ts';
import { signalsTold } from '../formats/whole-before-signal.ts';
import { graderVersion } from '../library/grader-version.ts';
import { programVersion } from '../library/program-version.ts';
import { askedSheet } from './asked-sheet.ts';
import { chosenRubric } from './chosen-rubric.ts';
import { CommandFault } from './command-fault.ts';
import { type CommandOutput, toProcess } from './command-output.ts';
import { findRecordings } from './folder/find-recordings.ts';
import { exitCodeOf, folderResultOf } from './folder/folder-outcome.ts';
import { folderText } from './folder/folder-text.ts';
import { notePath } from './folder/graded-note.ts';
import { outputNames } from './folder/output-names.ts';
import { clearLeftovers, readyReportFolder, writeIntoFolder } from './folder/report-folder.ts';
import type { TakeJob } from './folder/take-job.ts';
import { takesDone } from './folder/takes-done.ts';
import { lineOptions } from './line-options.ts';
import { numberOption } from './number-option.ts';
import { checkOutputPaths } from './output-paths.ts';
import { screenOf } from './screen.ts';

interface Options {
  readonly exercise?: string;
  readonly sheet?: string;
  readonly rubric: string;
  readonly discomfort?: true;
  readonly json?: string | true;
  readonly reportFolder?: string;
  readonly sound: boolean;
  readonly again?: true;
  readonly atOnce?: string;
  readonly [lineOption: string]: unknown;
}

const help = `
Examples:
  evenhand folder .
  evenhand folder . --sheet week-7.sheet --report-folder reports
  evenhand folder . --exercise ">RLR >LRL" --bpm 144 --times 9 --json

What was played stands on a sheet of the same name beside each recording (monday.wav and
monday.sheet); recordings without one are held against --sheet or --exercise. Folders inside the
folder are looked into too. A recording that can't be read doesn't stop the others.

The report folder gets a page that leads to the reports, and for each recording its report and its
result as JSON. Run the same command again and only what is new or has changed is graded: another
recording, another sheet or rubric, another version of this program. Ctrl-C loses nothing that is
done.

The exit code is 0 when all were graded, however low; else that of the worst: 1 when something went
wrong, 3 when a recording or its sheet can't be read, 4 when a take can't be graded; 2 when this
command can't be understood.
`;

/** More threads than any machine has use for. Our judgement. */
const mostAtOnce = 32;

function workersFrom(typed: string | undefined): number {
  if (typed === undefined) return Math.min(8, availableParallelism());
  return numberOption('--at-once', typed, { least: 1, most: mostAtOnce, whole: true });
}

/**
 * The command that grades the recordings of a folder side by side. The summary, or the result sent to `-`, goes to
 * stdout, all talk to stderr. Sets `process.exitCode` by the worst that became of a recording; throws `CommandFault`.
 *
 * @example await folderCommand(output).parseAsync(['tuesday', '--sheet', 'week-7.sheet'], { from: 'user' })
 */
export function folderCommand(output: CommandOutput = toProcess): Command {
  const command = new Command('folder')
    .description('Grade all recordings of a folder, one take each.')
    .argument('<folders...>', 'folders with recordings, or recordings')
    .option('--exercise <text>', 'what was played in all of them: name of an exercise, or notation in quotes')
    .option('--sheet <file>', 'what was played in those without a sheet of their own');
  for (const { name, value, about } of lineOptions) command.option(`--${name} <${value}>`, about);
  return command
    .option(
      '--rubric <name>',
      `how strictly to score: ${rubrics.map(({ id }) => id).join(', ')}, or a file`,
      'steady',
    )
    .option('--discomfort', 'something hurt or tingled: no advice to go faster')
    .option('--json [file]', 'write the summary as JSON, on the screen without a file')
    .option('--report-folder <folder>', 'write a report for each take, and a page that leads to them')
    .option('--no-sound', 'leave the sound of the takes out of the reports')
    .option('--again', 'grade everything anew')
    .option('--at-once <number>', 'takes graded side by side (as many as there are processors, 8 at most)')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr })
    .action(async (folders: string[], options: Options) => {
      const { json, reportFolder, exercise, sheet } = options;
      const jsonPath = json === true ? '-' : json;
      checkOutputPaths(jsonPath === undefined ? {} : { json: jsonPath }, undefined, [
        ...folders,
        ...(sheet === undefined ? [] : [sheet]),
        options.rubric,
      ]);
      const workers = workersFrom(options.atOnce);
      const rubric = await chosenRubric(options.rubric);
      const common = exercise === undefined && sheet === undefined ? null : askedSheet(options);
      const jobs = jobsOf(folders, common, rubric, options);
      if (reportFolder !== undefined) {
        readyReportFolder(reportFolder);
        const places = jobs.flatMap(({ outputs }) =>
          outputs === null ? [] : [dirname(join(outputs.folder, outputs.name)), dirname(notePath(outputs))],
        );
        clearLeftovers(new Set([reportFolder, ...places]), Date.now());
      }
      const takes = await takesDone(jobs, workers, output);
      const result = folderResultOf(takes, programVersion);
      const document = `${JSON.stringify(result)}\n`;
      output.stdout(jsonPath === '-' ? document : folderText(result, screenOf()));
      if (jsonPath !== undefined && jsonPath !== '-') {
        writeIntoFolder({ path: jsonPath, contents: document });
        output.stderr(`Summary written to ${jsonPath}\n`);
        await signalsTold();
      }
      if (reportFolder !== undefined) {
        const { writeFolderPage } = await import('../report/folder/write-folder-page.ts');
        const path = join(reportFolder, 'index.html');
        writeIntoFolder({ path, contents: await writeFolderPage(result, titleOf(folders)) });
        output.stderr(`Reports, and the page that leads to them, written to ${path}\n`);
      }
      process.exitCode = exitCodeOf(result.counts);
    });
}

const titleOf = (folders: readonly string[]) => folders.map((folder) => basename(resolve(folder))).join(', ');

function jobsOf(
  folders: readonly string[],
  sheet: Sheet | null,
  rubric: Rubric,
  { reportFolder, discomfort, sound, again }: Options,
): TakeJob[] {
  const found = findRecordings(folders, reportFolder);
  if (found.length === 0) {
    const where = folders.map((folder) => `"${folder}"`).join(', ');
    throw new CommandFault(
      'unreadableInput',
      `There are no recordings in ${where}. Name a folder with WAV, FLAC, MP3, M4A or other recordings.`,
    );
  }
  const names = outputNames(found.map(({ shown }) => shown));
  return found.map(({ path, shown }, i) => ({
    ...{ path, shown, sheet, rubric, sound },
    discomfort: discomfort === true,
    again: again === true,
    program: graderVersion,
    outputs: reportFolder === undefined ? null : { folder: reportFolder, name: names[i]! },
  }));
}
