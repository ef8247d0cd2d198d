import { Command } from 'commander';
import { discomfortNoted } from '../library/discomfort-noted.ts';
import { judgedGuesses } from '../library/guess.ts';
import { exerciseCourses } from '../library/player-progress.ts';
import { type CommandOutput, toProcess } from './command-output.ts';
import { findPlayer } from './library/find-player.ts';
import { checkDayOption } from './library/keep-options.ts';
import { localDay } from './library/local-day.ts';
import { namedExercises } from './library/named-exercises.ts';
import { inLibrary, type LibraryOption, withLibraryOption } from './library/with-library.ts';
import { checkOutputPaths } from './output-paths.ts';
import { guessText, progressText } from './progress-text.ts';
import { printable } from './text-layout.ts';
import { writePage } from './write-page.ts';

interface Options extends LibraryOption {
  readonly player: string;
  readonly exercise?: string;
  readonly since?: string;
  readonly json?: true;
  readonly report?: string;
}

const help = `
Examples:
  evenhand progress --player Mirelle
  evenhand progress --player Mirelle --since 2026-01-01 --json
  evenhand progress --player Mirelle --report mirelle.html

A day counts once, by the median of its takes. Trends speak of takes like the newest: tempo within
3 %, the same technique, and for levels the same pad, sticks and device, where these were noted.
`;

/** Before any take. */
const firstDay = '1970-01-01';

/** The command that shows how a player's exercises go over weeks, and the tempo to try next. */
export function progressCommand(output: CommandOutput = toProcess): Command {
  const command = new Command('progress')
    .description("Show how a player's exercises go over the weeks, and the next tempo.")
    .requiredOption('--player <name>', 'whose')
    .option('--exercise <name>', 'one exercise; all of them without')
    .option('--since <day>', 'from this day on, such as 2026-01-01')
    .option('--json', 'write JSON')
    .option('--report <file>', 'write a page with pictures to open in a browser')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  return withLibraryOption(command).action((options: Options) =>
    inLibrary(options, async ({ db }) => {
      const { since, report } = options;
      if (report !== undefined) checkOutputPaths({ report }, undefined, []);
      if (since !== undefined) checkDayOption('since', since);
      const { id: personId, name } = await findPlayer(db, options.player);
      const today = localDay(new Date());
      const exercises = await namedExercises(db, personId, options.exercise);
      const asked = { personId, today, fromDay: since };
      const shown = await exerciseCourses(db, { ...asked, exercises });
      const guesses = await judgedGuesses(db, { personId });
      if (report !== undefined) {
        const { progressHtml } = await import('./weeks/progress-html.ts');
        const discomfort = await discomfortNoted(db, personId, today);
        const asked = { personId, fromDay: since ?? firstDay, toDay: today };
        writePage(report, await progressHtml(db, { name, discomfort, shown, guesses, ...asked }), output);
        if (report === '-') return;
      }
      if (options.json) {
        const exercises = shown.map(({ exercise, progress }) => ({ exercise, progress }));
        return output.stdout(`${JSON.stringify({ player: name, exercises, guesses }, null, 2)}\n`);
      }
      output.stdout(`${printable(name)}\n`);
      for (const { exercise, progress } of shown)
        output.stdout(
          `\n${printable(exercise.label)}  (${exercise.id})\n${progressText(progress).join('\n')}\n`,
        );
      if (guesses.length > 0) output.stdout(`\n${guessText(guesses).join('\n')}\n`);
    }),
  );
}
