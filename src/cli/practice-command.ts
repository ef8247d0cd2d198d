import type { Command } from 'commander';
import { dayNumber, dayOf, weekOf } from '../core/progress/day-number.ts';
import { jumpRule, type PracticeLoad } from '../core/progress/practice-load.ts';
import { deleteDiscomfort, deletePractice, listDiscomfort, listPractice } from '../library/practice.ts';
import { practiceOf } from '../library/practice-of.ts';
import { restDueOf } from '../library/rest-due-of.ts';
import { CommandFault } from './command-fault.ts';
import { type CommandOutput, toProcess } from './command-output.ts';
import { findPlayer } from './library/find-player.ts';
import { checkDayOption } from './library/keep-options.ts';
import { localDay } from './library/local-day.ts';
import { practiceDiscomfortCommand, practiceLogCommand } from './library/practice-notes.ts';
import {
  inLibrary,
  type LibraryOption,
  libraryCommand,
  withExamples,
  withLibraryParts,
} from './library/with-library.ts';
import { practiceText } from './practice-text.ts';

interface Options extends LibraryOption {
  readonly player: string;
  readonly since?: string;
  readonly json?: true;
}

const help = `
Examples:
  evenhand practice --player Mirelle
  evenhand practice log 25 --player Mirelle --note "Warm-up without the phone"
  evenhand practice discomfort "Left wrist tired after the long evening" --player Mirelle

Recorded takes count by themselves; what wasn't recorded is written down with log. Notes on
discomfort are private: they stop tempo advice for a week and never leave with a take.
`;

/** Days shown unless told otherwise: four weeks. */
const usualDays = 28;

/** The command that shows a player's practice by days and hands, and takes down minutes and discomfort. */
export function practiceCommand(output: CommandOutput = toProcess): Command {
  const command = libraryCommand('practice', output)
    .description('Show how much was practised, day by day and hand by hand; log minutes and discomfort.')
    .option('--player <name>', 'whose')
    .option('--since <day>', 'from this day on, such as 2026-01-01 (four weeks)')
    .option('--json', 'write JSON')
    .addHelpText('after', help)
    .action((options: Partial<Options>) => {
      const { player, since, json } = options;
      if (player === undefined)
        throw new CommandFault('usage', "Whose practice isn't said. Add --player NAME.");
      if (since !== undefined) checkDayOption('since', since);
      return inLibrary(options, async ({ db }) => {
        const { id: personId, name } = await findPlayer(db, player);
        const now = Date.now();
        const today = localDay(new Date(now));
        const fromDay = since ?? dayOf(dayNumber(today) - usualDays + 1);
        const days = { personId, fromDay, toDay: today };
        // The weeks before are what a jump is held against.
        const before = dayOf(dayNumber(weekOf(fromDay)) - 7 * jumpRule.weeks);
        const load = loadFrom(await practiceOf(db, { ...days, fromDay: before }), fromDay);
        const shown = {
          load,
          written: await listPractice(db, days),
          discomfort: await listDiscomfort(db, days),
          restDue: await restDueOf(db, personId, now),
        };
        if (json)
          return output.stdout(`${JSON.stringify({ player: name, fromDay, today, ...shown }, null, 2)}\n`);
        output.stdout(`${practiceText({ name, fromDay, today, ...shown }).join('\n')}\n`);
      });
    });

  const remove = withExamples(libraryCommand('delete', output), 'practice delete 3f0a91c2 --player Mirelle')
    .description('Delete minutes or a note that were written down.')
    .argument('<entry>', 'its name on the list of the player')
    .requiredOption('--player <name>', 'whose')
    .action((typed: string, { player, ...option }: LibraryOption & { readonly player: string }) =>
      inLibrary(option, async ({ db }) => {
        const { id: personId } = await findPlayer(db, player);
        const always = { personId, fromDay: '0001-01-01', toDay: '9999-12-31' };
        const minutes = (await listPractice(db, always)).filter(({ id }) => id.startsWith(typed));
        const notes = (await listDiscomfort(db, always)).filter(({ id }) => id.startsWith(typed));
        if (minutes.length + notes.length !== 1)
          throw new CommandFault(
            'usage',
            minutes.length + notes.length === 0
              ? `Nothing of this player is called "${typed}". \`evenhand practice --player …\` lists what was written down.`
              : `Several entries begin with "${typed}". Write more of the name.`,
          );
        if (minutes[0] !== undefined) await deletePractice(db, minutes[0].id);
        if (notes[0] !== undefined) await deleteDiscomfort(db, notes[0].id);
        output.stdout(minutes.length > 0 ? 'Minutes deleted.\n' : 'Note deleted.\n');
      }),
    );
  return withLibraryParts(command, [practiceLogCommand(output), practiceDiscomfortCommand(output), remove]);
}

/** The part of a load from a day on. */
function loadFrom({ days, weeks, jumps, logged }: PracticeLoad, fromDay: string): PracticeLoad {
  const week = weekOf(fromDay);
  return {
    days: days.filter(({ from }) => from >= fromDay),
    weeks: weeks.filter(({ from }) => from >= week),
    jumps: jumps.filter((jump) => jump.week >= week),
    logged,
  };
}
