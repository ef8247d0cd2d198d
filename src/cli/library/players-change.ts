import type { Command } from 'commander';
import { changePerson } from '../../library/people.ts';
import { CommandFault } from '../command-fault.ts';
import type { CommandOutput } from '../command-output.ts';
import { printable } from '../text-layout.ts';
import { findPlayer } from './find-player.ts';
import { inLibrary, type LibraryOption, libraryCommand, withExamples } from './with-library.ts';

interface Options extends LibraryOption {
  readonly note?: string;
  readonly role?: string;
}

const roles = ['student', 'player'] as const;

/** Changes what is noted of a player. */
export function playersChangeCommand(output: CommandOutput): Command {
  const command = libraryCommand('change', output)
    .description('Note something of a player: lead hand, lesson day, grip; student or player.')
    .argument('<name>', 'the name')
    .option('--note <words>', 'the note, in the place of the one there is')
    .option('--role <word>', `as what the player is here: ${roles.join(' or ')}`);
  return withExamples(
    command,
    'players change Tomas --note "Leads with the left; lesson on Mondays"',
    'players change Tomas --role player',
  ).action((name: string, { note, role: typed, ...option }: Options) => {
    const role = roles.find((one) => one === typed);
    if (typed !== undefined && role === undefined)
      throw new CommandFault('usage', `--role ${typed} is unknown. Write ${roles.join(' or ')}.`);
    if (note === undefined && role === undefined)
      throw new CommandFault('usage', 'Nothing to change is named. Add --note or --role.');
    return inLibrary(option, async ({ db }) => {
      const { id, name: known } = await findPlayer(db, name);
      const changes = {
        ...(note === undefined ? {} : { note: printable(note) }),
        ...(role === undefined ? {} : { role }),
      };
      await changePerson(db, { id, ...changes });
      output.stdout(`Noted of ${printable(known)}.\n`);
    });
  });
}
