import { Command } from 'commander';
import { counted } from '../../core/result/figures.ts';
import { outputFaultSentence } from '../../formats/output-fault-sentence.ts';
import { outputFault, writeAtomically } from '../../formats/write-atomically.ts';
import type { LibraryDb } from '../../library/library.ts';
import { listTakes, type PageKey, type TakePage } from '../../library/list-takes.ts';
import { exportTakes } from '../../library/take-files.ts';
import { CommandFault } from '../command-fault.ts';
import type { CommandOutput } from '../command-output.ts';
import { findPlayer } from './find-player.ts';
import { findTake } from './find-take.ts';
import { checkDayOption } from './keep-options.ts';
import { inLibrary, type LibraryOption, withLibraryOption } from './with-library.ts';

interface Options extends LibraryOption {
  readonly to: string;
  readonly player?: string;
  readonly since?: string;
}

const help = `
Examples:
  evenhand takes export newest --to mirelle.take.zip

A take file holds recording, sheet, result and remarks; the page and other libraries take it in.
`;

/** Writes kept takes as one take file. */
export function takesExportCommand(output: CommandOutput): Command {
  const command = new Command('export')
    .description('Write takes as one file that other libraries and the page take in.')
    .argument('[takes...]', 'their names on the list, or newest')
    .requiredOption('--to <file>', 'the file, such as lesson.take.zip')
    .option('--player <name>', 'all takes of a player')
    .option('--since <day>', 'with --player: from this day on')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  return withLibraryOption(command).action((typed: string[], { to, player, since, ...option }: Options) =>
    inLibrary(option, async (library) => {
      if (since !== undefined) checkDayOption('since', since);
      if (typed.length > 0 === (player !== undefined))
        throw new CommandFault('usage', 'Name the takes, or a player with --player, one of the two.');
      const fault = outputFault(to);
      if (fault !== undefined) throw new CommandFault('usage', outputFaultSentence(to, fault));
      const ids =
        player === undefined
          ? await Promise.all(typed.map((name) => findTake(library.db, name)))
          : await idsOfPlayer(library.db, player, since);
      if (ids.length === 0)
        throw new CommandFault('usage', 'No take is kept that fits, so nothing was written.');
      const bytes = new Uint8Array(await (await exportTakes(library, [...new Set(ids)])).arrayBuffer());
      const failed = writeAtomically(to, bytes);
      if (failed !== undefined) throw new CommandFault('fault', outputFaultSentence(to, failed));
      output.stderr(`${counted(ids.length, 'take')} written to ${to}\n`);
    }),
  );
}

async function idsOfPlayer(db: LibraryDb, player: string, since: string | undefined): Promise<string[]> {
  const filter = { personId: (await findPlayer(db, player)).id, fromDay: since };
  const ids: string[] = [];
  let after: PageKey | null = null;
  do {
    const page: TakePage = await listTakes(db, { filter, limit: 200, after });
    ids.push(...page.takes.map(({ id }) => id));
    after = page.next;
  } while (after !== null);
  return ids;
}
