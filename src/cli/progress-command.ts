import { Command } from 'commander';
import { dayNumber } from '../core/progress/day-number.ts';
import { exerciseProgress } from '../core/progress/exercise-progress.ts';
import { exercisePlays } from '../library/exercise-plays.ts';
import type { LibraryDb } from '../library/library.ts';
import { listDiscomfort } from '../library/practice.ts';
import { type CommandOutput, toProcess } from './command-output.ts';
import { findPlayer } from './library/find-player.ts';
import { checkDayOption } from './library/keep-options.ts';
import { localDay } from './library/local-day.ts';
import { playedExercises } from './library/played-exercises.ts';
import { inLibrary, type LibraryOption, withLibraryOption } from './library/with-library.ts';
import { progressText } from './progress-text.ts';
import { printable } from './text-layout.ts';

interface Options extends LibraryOption {
  readonly player: string;
  readonly exercise?: string;
  readonly since?: string;
  readonly json?: true;
}

const help = `
Examples:
  evenhand progress --player Mirelle
  evenhand progress --player Mirelle --since 2026-01-01 --json

A day counts once, by the median of its takes. Trends speak of takes like the newest: tempo within
3 %, the same technique, and for levels the same pad, sticks and device, where these were noted.
`;

/** A discomfort note blocks advice on tempo for so many days; common practice is to go on only when it is gone. */
const discomfortDays = 7;

/** The command that shows how a player's exercises go over weeks, and the tempo to try next. */
export function progressCommand(output: CommandOutput = toProcess): Command {
  const command = new Command('progress')
    .description("Show how a player's exercises go over the weeks, and the next tempo.")
    .requiredOption('--player <name>', 'whose')
    .option('--exercise <name>', 'one exercise; all of them without')
    .option('--since <day>', 'from this day on, such as 2026-01-01')
    .option('--json', 'write JSON')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  return withLibraryOption(command).action((options: Options) =>
    inLibrary(options, async ({ db }) => {
      const { since } = options;
      if (since !== undefined) checkDayOption('since', since);
      const { id: personId, name } = await findPlayer(db, options.player);
      const today = dayNumber(localDay(new Date()));
      const now = {
        discomfort: await hasDiscomfort(db, personId, today),
        daysAgo: (day: string) => today - dayNumber(day),
      };
      const exercises = await playedExercises(db, personId, options.exercise);
      const shown = await Promise.all(
        exercises.map(async (exercise) => {
          const asked = {
            personId,
            exerciseId: exercise.id,
            ...(since === undefined ? {} : { fromDay: since }),
          };
          return { exercise, progress: exerciseProgress(await exercisePlays(db, asked), now) };
        }),
      );
      if (options.json)
        return output.stdout(`${JSON.stringify({ player: name, exercises: shown }, null, 2)}\n`);
      output.stdout(`${printable(name)}\n`);
      for (const { exercise, progress } of shown)
        output.stdout(
          `\n${printable(exercise.label)}  (${exercise.id})\n${progressText(progress).join('\n')}\n`,
        );
    }),
  );
}

async function hasDiscomfort(db: LibraryDb, personId: string, today: number): Promise<boolean> {
  const { dayOf } = await import('../core/progress/day-number.ts');
  const notes = await listDiscomfort(db, {
    personId,
    fromDay: dayOf(today - discomfortDays),
    toDay: dayOf(today + 1),
  });
  return notes.length > 0;
}
