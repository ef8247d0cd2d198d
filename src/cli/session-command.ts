import { mkdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { Command } from 'commander';
import { gapWarnings } from '../core/grading/recording-gaps.ts';
import { rubrics } from '../core/scoring/rubrics/index.ts';
import { gradeSession } from '../core/session/grade-session.ts';
import type { SessionResult } from '../core/session/session-result.ts';
import { cutSource } from '../core/signal/cut-source.ts';
import type { Source } from '../core/signal/source.ts';
import { outputFaultSentence } from '../formats/output-fault-sentence.ts';
import { writeAtomically } from '../formats/write-atomically.ts';
import { askedSheet } from './asked-sheet.ts';
import { chosenRubric } from './chosen-rubric.ts';
import { CommandFault } from './command-fault.ts';
import { type CommandOutput, toProcess } from './command-output.ts';
import { exitCodes } from './exit-codes.ts';
import { openTake } from './open-take.ts';
import { checkOutputPaths } from './output-paths.ts';
import { progressLine, toldOpening } from './progress-line.ts';
import { screenOf } from './screen.ts';
import { sessionSummary } from './session-summary.ts';
import { writeOutputs } from './write-outputs.ts';

interface Options {
  readonly sheet?: string;
  readonly rubric: string;
  readonly discomfort?: true;
  readonly json?: string | true;
  readonly reportFolder?: string;
  readonly sound: boolean;
}

const help = `
Examples:
  evenhand session monday.wav --sheet week-7.sheet
  evenhand session monday.wav --sheet week-7.sheet --json monday.json
  evenhand session monday.wav --sheet week-7.sheet --report-folder monday

The lines may come in any order, be left out or played more often than asked. Pauses, talk and
noodling between them are left out. Each playing of a line is graded as a take of its own.

The exit code is 0 when a line was found, however low it scores; 2 when this command can't be
understood; 3 when the recording, the sheet or the rubric can't be read; 4 when no line was found.
`;

/** The folder for the reports, made where it isn't there yet. Throws a usage fault. */
function madeFolder(folder: string): void {
  if (folder === '')
    throw new CommandFault('usage', '--report-folder has an empty name behind it. Name a folder.');
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory()) return;
  try {
    mkdirSync(folder);
  } catch (error) {
    const reason = (error as Error).message;
    throw new CommandFault('usage', outputFaultSentence(folder, { code: 'write-failed', facts: { reason } }));
  }
}

/**
 * The command that grades a practice session in one recording. The summary, or the result sent to `-`, goes to stdout,
 * all talk to stderr. Sets `process.exitCode` to 4 where no line was found; throws `CommandFault`.
 *
 * @example await sessionCommand(output).parseAsync(['practice.wav', '--sheet', 'week-7.sheet'], { from: 'user' })
 */
export function sessionCommand(output: CommandOutput = toProcess): Command {
  return new Command('session')
    .description('Grade a whole practice session in one recording, line by line.')
    .argument('<recording>', 'the recording (WAV, FLAC, MP3, M4A, Ogg, video, …); - reads it from a pipe')
    .requiredOption('--sheet <file>', 'the lines that were practised')
    .option(
      '--rubric <name>',
      `how strictly to score: ${rubrics.map(({ id }) => id).join(', ')}, or a file`,
      'steady',
    )
    .option('--discomfort', 'something hurt or tingled: no advice to go faster')
    .option('--json [file]', 'write the whole result as JSON, on the screen without a file')
    .option(
      '--report-folder <folder>',
      'write a report for each take, and a page that leads to them, into a folder',
    )
    .option('--no-sound', 'leave the sound of the takes out of the reports')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr })
    .action(async (named: string, options: Options) => {
      const { json, discomfort = false, reportFolder, sound } = options;
      const jsonPath = json === true ? '-' : json;
      checkOutputPaths(jsonPath === undefined ? {} : { json: jsonPath }, undefined, [
        named,
        options.sheet ?? '',
        options.rubric,
      ]);
      const rubric = await chosenRubric(options.rubric);
      const sheet = askedSheet({ sheet: options.sheet! });
      const progress = progressLine(process.stderr, () => performance.now());
      const recording = await toldOpening(progress, (told) => openTake(named, told));
      try {
        const { source, name, notes, gaps } = recording;
        const warnings = [
          ...notes.map(({ code, facts }) => ({ code, facts: { ...facts } })),
          ...gapWarnings(gaps, source.sampleRate),
        ];
        const sha256 = recording.sha256();
        const result = gradeSession(source, sheet, {
          name,
          sha256,
          rubric,
          discomfort,
          warnings,
          tell: progress.tell,
        });
        progress.end();
        if (result.takes.length === 0) process.exitCode = exitCodes.notGradable;
        const document = `${JSON.stringify(result)}\n`;
        if (jsonPath === '-') output.stdout(document);
        else output.stdout(sessionSummary(result, screenOf()));
        if (jsonPath !== undefined && jsonPath !== '-') {
          const fault = writeAtomically(jsonPath, document);
          if (fault !== undefined) throw new CommandFault('fault', outputFaultSentence(jsonPath, fault));
          output.stderr(`Result written to ${jsonPath}\n`);
        }
        if (reportFolder !== undefined) {
          madeFolder(reportFolder);
          await writeReports(result, reportFolder, sound ? source : null, output);
        }
      } finally {
        recording.close();
      }
    });
}

/** A report for each take, and the page that leads to them. */
async function writeReports(
  session: SessionResult,
  folder: string,
  source: Source | null,
  output: CommandOutput,
): Promise<void> {
  const names = session.takes.map(
    ({ line }, i) => `take-${String(i + 1).padStart(2, '0')}-line-${line + 1}.html`,
  );
  for (const [i, take] of session.takes.entries()) {
    const files = { report: join(folder, names[i]!) };
    const sound = source === null ? null : cutSource(source, take);
    await writeOutputs(take.result, { files, pictures: undefined, sound }, output);
  }
  const { writeSessionPage } = await import('../report/write-session-page.ts');
  const path = join(folder, 'index.html');
  const fault = writeAtomically(path, await writeSessionPage(session, names));
  if (fault !== undefined) throw new CommandFault('fault', outputFaultSentence(path, fault));
  output.stderr(`Page that leads to them written to ${path}\n`);
}
