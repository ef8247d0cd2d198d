import { Command } from 'commander';
import { counted } from '../../core/result/figures.ts';
import { deleteTakes } from '../../library/delete-takes.ts';
import { listedTakes } from '../../library/listed-takes.ts';
import { CommandFault } from '../command-fault.ts';
import type { CommandOutput } from '../command-output.ts';
import { findTake } from './find-take.ts';
import { takeList } from './take-list.ts';
import { inLibrary, type LibraryOption, withLibraryOption } from './with-library.ts';

interface Options extends LibraryOption {
  readonly yes?: true;
}

const help = `
Examples:
  evenhand takes delete newest --yes

Takes go with their recordings and remarks and can't be brought back, but from a backup.
`;

/** Deletes takes for good, once that is confirmed. */
export function takesDeleteCommand(output: CommandOutput): Command {
  const command = new Command('delete')
    .description('Delete takes for good, with their recordings.')
    .argument('<takes...>', 'their names on the list')
    .option('--yes', 'really delete them')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  return withLibraryOption(command).action((typed: string[], { yes, ...option }: Options) =>
    inLibrary(option, async (library) => {
      const ids = await Promise.all(typed.map((name) => findTake(library.db, name)));
      if (!yes) {
        output.stderr(`${takeList(await listedTakes(library.db, ids)).join('\n')}\n`);
        throw new CommandFault(
          'usage',
          'Nothing was deleted. Add --yes to delete these takes and their recordings for good.',
        );
      }
      const { takes, audioBytes } = await deleteTakes(library, ids);
      output.stdout(
        `${counted(takes, 'take')} deleted, ${(audioBytes / 1e6).toFixed(1)} MB of recordings with ${takes === 1 ? 'it' : 'them'}.\n`,
      );
    }),
  );
}
