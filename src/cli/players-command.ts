import type { Command } from 'commander';
import { counted } from '../core/result/figures.ts';
import { deletePerson, mergePeople } from '../library/move-people.ts';
import { addPerson, changePerson, listPeople } from '../library/people.ts';
import { CommandFault } from './command-fault.ts';
import { type CommandOutput, toProcess } from './command-output.ts';
import { findPlayer, playerNamed } from './library/find-player.ts';
import { localTime } from './library/local-day.ts';
import { playersChangeCommand } from './library/players-change.ts';
import {
  inLibrary,
  type LibraryOption,
  libraryCommand,
  withExamples,
  withLibraryParts,
} from './library/with-library.ts';
import { padded, printable } from './text-layout.ts';

const help = `
Examples:
  evenhand players
  evenhand players add "Tomas B."
  evenhand players rename "Tomas B." "Tomas"
  evenhand players change Tomas --note "Leads with the left; lesson on Mondays"
`;

interface Options extends LibraryOption {
  readonly json?: true;
  readonly yes?: true;
}

/** The command that lists the players of a library, and adds, renames, merges and deletes them. */
export function playersCommand(output: CommandOutput = toProcess): Command {
  const command = libraryCommand('players', output)
    .description('List the players whose takes are kept; add, rename, merge and delete them.')
    .option('--json', 'write JSON')
    .addHelpText('after', help)
    .action((options: Options) =>
      inLibrary(options, async ({ db }) => {
        const people = await listPeople(db);
        if (options.json) return output.stdout(`${JSON.stringify(people, null, 2)}\n`);
        if (people.length === 0)
          return output.stderr('There are no players yet. Keep a take: `evenhand grade … --player NAME`.\n');
        const width = Math.max(...people.map(({ name }) => [...printable(name)].length));
        for (const { name, takes, lastAt, note } of people)
          output.stdout(
            `${padded(printable(name), width)}  ${padded(`${counted(takes, 'take')}`, 10, 'end')}${lastAt === null ? '' : `, the last ${localTime(lastAt)}`}${note === '' ? '' : `  ${printable(note)}`}\n`,
          );
      }),
    );

  const add = withExamples(libraryCommand('add', output), 'players add "Tomas B."')
    .description('Add a player.')
    .argument('<name>', 'the name, in quotes')
    .action((name: string, options: Options) =>
      inLibrary(
        options,
        async ({ db }) => {
          await db.transaction().execute(async (transaction) => {
            if ((await playerNamed(transaction, name)) !== undefined)
              throw new CommandFault('usage', `There is a player "${name}" already. Choose another name.`);
            const id = crypto.randomUUID();
            await addPerson(transaction, { id, name, role: 'student', note: '', createdAt: Date.now() });
          });
          output.stdout(`${printable(name)} added.\n`);
        },
        { make: true },
      ),
    );

  const rename = withExamples(libraryCommand('rename', output), 'players rename Mirelle "Mirelle Q."')
    .description('Give a player another name.')
    .argument('<name>', 'the name now')
    .argument('<new-name>', 'the name from now on')
    .action((name: string, newName: string, options: Options) =>
      inLibrary(options, async ({ db }) => {
        const { id } = await findPlayer(db, name);
        const other = await playerNamed(db, newName);
        if (other !== undefined && other.id !== id)
          throw new CommandFault(
            'usage',
            `There is a player "${newName}" already. To make one of the two: \`evenhand players merge\`.`,
          );
        await changePerson(db, { id, name: newName });
        output.stdout(`${printable(name)} is ${printable(newName)} now.\n`);
      }),
    );

  const merge = withExamples(libraryCommand('merge', output), 'players merge Mirelle Tomas --yes')
    .description('Make one player of two: all takes of the first go to the second.')
    .argument('<name>', 'who is joined to the other')
    .argument('<into>', 'who has the takes from now on')
    .option('--yes', 'really join them')
    .action((name: string, into: string, { yes, ...options }: Options) =>
      inLibrary(options, async ({ db }) => {
        const [from, to] = [await findPlayer(db, name), await findPlayer(db, into)];
        if (from.id === to.id) throw new CommandFault('usage', 'These are one player already.');
        if (!yes)
          throw new CommandFault(
            'usage',
            `Nothing was changed. Add --yes to give the ${counted(from.takes, 'take')} of "${from.name}" to "${to.name}"; this can't be taken back.`,
          );
        await mergePeople(db, { from: from.id, into: to.id });
        output.stdout(
          `${counted(from.takes, 'take')} of ${printable(from.name)} given to ${printable(to.name)}.\n`,
        );
      }),
    );

  const remove = withExamples(libraryCommand('delete', output), 'players delete Tomas --yes')
    .description('Delete a player for good, with all takes and recordings.')
    .argument('<name>', 'the name')
    .option('--yes', 'really delete')
    .action((name: string, { yes, ...options }: Options) =>
      inLibrary(options, async (library) => {
        const person = await findPlayer(library.db, name);
        if (!yes)
          throw new CommandFault(
            'usage',
            `Nothing was deleted. Add --yes to delete "${person.name}" with ${counted(person.takes, 'take')} and all recordings for good.`,
          );
        const { takes, audioBytes } = await deletePerson(library, person.id);
        output.stdout(
          `${printable(person.name)} deleted, with ${counted(takes, 'take')} and ${(audioBytes / 1e6).toFixed(1)} MB of recordings.\n`,
        );
      }),
    );
  return withLibraryParts(command, [add, rename, playersChangeCommand(output), merge, remove]);
}
