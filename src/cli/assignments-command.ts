import type { Command } from 'commander';
import { assignmentWords, playedWords } from '../core/progress/assignment-words.ts';
import { outputFaultSentence } from '../formats/output-fault-sentence.ts';
import { writeAtomically } from '../formats/write-atomically.ts';
import { assignmentPlays } from '../library/assignment-plays.ts';
import { assignmentSheet } from '../library/assignment-sheet.ts';
import { deleteAssignment, finishAssignment, listAssignments } from '../library/assignments.ts';
import { listPeople } from '../library/people.ts';
import { CommandFault } from './command-fault.ts';
import { type CommandOutput, toProcess } from './command-output.ts';
import { assignmentsSetCommand } from './library/assignments-set.ts';
import { findAssignment } from './library/find-assignment.ts';
import { findPlayer } from './library/find-player.ts';
import { localDay } from './library/local-day.ts';
import { shortId } from './library/short-id.ts';
import {
  inLibrary,
  type LibraryOption,
  libraryCommand,
  withExamples,
  withLibraryParts,
} from './library/with-library.ts';
import { printable } from './text-layout.ts';

interface Options extends LibraryOption {
  readonly player?: string;
  readonly all?: true;
  readonly json?: true;
}

const help = `
Examples:
  evenhand assignments set week-7.sheet --player Mirelle --due 2026-12-01 --bpm 96
  evenhand assignments --player Mirelle
  evenhand assignments done newest

An assignment is a sheet for a player until a day. Every take with its exercises that is kept
afterwards, at its tempo within 3 %, counts as played to it. Slower takes are named as work toward
it, those at other tempos apart.
`;

/** The command that lists what players are to practise, and hands out, ends and deletes it. */
export function assignmentsCommand(output: CommandOutput = toProcess): Command {
  const command = libraryCommand('assignments', output)
    .description('List what players are to practise until when; hand out, end and delete it.')
    .option('--player <name>', 'of one player')
    .option('--all', 'with those that are done')
    .option('--json', 'write JSON')
    .addHelpText('after', help)
    .action(({ player, all, json, ...option }: Options) =>
      inLibrary(option, async ({ db }) => {
        const asked = player === undefined ? {} : { personId: (await findPlayer(db, player)).id };
        const listed = (await listAssignments(db, asked)).filter(({ doneAt }) => all || doneAt === null);
        const names = new Map((await listPeople(db)).map(({ id, name }) => [id, name]));
        const rows = await Promise.all(
          listed.map(async (one) => ({ ...one, plays: await assignmentPlays(db, one) })),
        );
        if (json) return output.stdout(`${JSON.stringify(rows, null, 2)}\n`);
        if (rows.length === 0)
          return output.stderr('Nothing is open. Hand out a sheet: `evenhand assignments set`.\n');
        const today = localDay(new Date());
        for (const { id, personId, title, note, plays, ...one } of rows) {
          const whom = personId === null ? 'anybody' : printable(names.get(personId) ?? '');
          output.stdout(`${shortId(id)}  ${whom}: ${printable(title) || 'a sheet without a title'}\n`);
          output.stdout(`          ${assignmentWords(one, today)}; ${playedWords(plays)}\n`);
          if (note !== '') output.stdout(`          ${printable(note)}\n`);
        }
      }),
    );

  const done = withExamples(
    libraryCommand('done', output),
    'assignments done newest',
    'assignments done newest --open',
  )
    .description('End an assignment, or open it again.')
    .argument('<assignment>', 'its name on the list, or newest')
    .option('--open', 'open it again')
    .action((typed: string, { open, ...option }: LibraryOption & { readonly open?: true }) =>
      inLibrary(option, async ({ db }) => {
        const { id, title } = await findAssignment(db, typed);
        await finishAssignment(db, { id, doneAt: open ? null : Date.now() });
        output.stdout(`${printable(title) || shortId(id)} is ${open ? 'open again' : 'done'}.\n`);
      }),
    );

  const write = withExamples(
    libraryCommand('write', output),
    'assignments write newest',
    'assignments write newest --output mirelle.sheet',
  )
    .description('Write an assignment as a sheet file to send to the player.')
    .argument('<assignment>', 'its name on the list, or newest')
    .option('--output <file>', 'where to, such as mirelle.sheet; without it the text is printed')
    .action((typed: string, { output: path, ...option }: LibraryOption & { readonly output?: string }) =>
      inLibrary(option, async ({ db }) => {
        const assignment = await findAssignment(db, typed);
        const names = new Map((await listPeople(db)).map(({ id, name }) => [id, name]));
        const text = assignmentSheet(assignment, names.get(assignment.personId ?? '') ?? '');
        if (path === undefined) return output.stdout(text);
        if (path === '')
          throw new CommandFault('usage', '--output has an empty name behind it. Name a file.');
        const fault = writeAtomically(path, text);
        if (fault !== undefined) throw new CommandFault('fault', outputFaultSentence(path, fault));
        output.stderr(`Sheet written to ${path}\n`);
      }),
    );

  const remove = withExamples(libraryCommand('delete', output), 'assignments delete newest --yes')
    .description('Delete an assignment for good. Its takes stay.')
    .argument('<assignment>', 'its name on the list, or newest')
    .option('--yes', 'really delete')
    .action((typed: string, { yes, ...option }: LibraryOption & { readonly yes?: true }) =>
      inLibrary(option, async ({ db }) => {
        const { id, title } = await findAssignment(db, typed);
        if (!yes)
          throw new CommandFault(
            'usage',
            `Nothing was deleted. Add --yes to delete the assignment "${title || shortId(id)}"; its takes stay.`,
          );
        await deleteAssignment(db, id);
        output.stdout('Assignment deleted; its takes stay.\n');
      }),
    );
  return withLibraryParts(command, [assignmentsSetCommand(output), done, write, remove]);
}
