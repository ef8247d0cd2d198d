#!/usr/bin/env node
import { setFlagsFromString } from 'node:v8';
import { version } from '../package.json';
import { type CommandTable, runCommandLine } from './cli/run-command-line.ts';

/*
 * A take of a minute is graded before much of the compiler's care pays off, and on two processors it works beside the
 * analysis and holds it up: a third less processor time for a minute, a quarter less for ten.
 * Only where it was measured; another version may not know the settings.
 */
if (process.versions.node.startsWith('20.')) {
  setFlagsFromString('--max-inlined-bytecode-size-cumulative=0');
  setFlagsFromString('--interrupt-budget=264000');
}

/** Every command, in the order in which help lists them; each loads when it is called for. */
const commands: CommandTable = {
  grade: async () => (await import('./cli/grade-command.ts')).gradeCommand(),
  session: async () => (await import('./cli/session-command.ts')).sessionCommand(),
  folder: async () => (await import('./cli/folder-command.ts')).folderCommand(),
  takes: async () => (await import('./cli/takes-command.ts')).takesCommand(),
  progress: async () => (await import('./cli/progress-command.ts')).progressCommand(),
  practice: async () => (await import('./cli/practice-command.ts')).practiceCommand(),
  compare: async () => (await import('./cli/compare-command.ts')).compareCommand(),
  lesson: async () => (await import('./cli/lesson-command.ts')).lessonCommand(),
  assignments: async () => (await import('./cli/assignments-command.ts')).assignmentsCommand(),
  players: async () => (await import('./cli/players-command.ts')).playersCommand(),
  library: async () => (await import('./cli/library-command.ts')).libraryCommand(),
  rubric: async () => (await import('./cli/rubric-command.ts')).rubricCommand(),
  measures: async () => (await import('./cli/measures-command.ts')).measuresCommand(),
  strokes: async () => (await import('./cli/strokes-command.ts')).strokesCommand(),
  sheet: async () => (await import('./cli/sheet-command.ts')).sheetCommand(),
  click: async () => (await import('./cli/click-command.ts')).clickCommand(),
  exercises: async () => (await import('./cli/exercises-command.ts')).exercisesCommand(),
  serve: async () => (await import('./cli/serve-command.ts')).serveCommand(),
};

// A reader such as `head` that has seen enough closes the pipe: that is no fault.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit();
    throw error;
  });
}

process.exitCode = await runCommandLine(process.argv.slice(2), { version, commands });
