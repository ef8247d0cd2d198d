import { Command } from 'commander';
import { writeRemark } from '../../library/remarks.ts';
import { CommandFault } from '../command-fault.ts';
import type { CommandOutput } from '../command-output.ts';
import { findTake } from './find-take.ts';
import { shortId } from './short-id.ts';
import { inLibrary, type LibraryOption, withLibraryOption } from './with-library.ts';

interface Options extends LibraryOption {
  readonly at?: string;
  readonly by?: string;
}

const help = `
Examples:
  evenhand takes remark newest "Left hand waits here" --at 12.5 --by "Ms Oduya"
`;

/** Pins a remark to a take, or to a moment of it. */
export function takesRemarkCommand(output: CommandOutput): Command {
  const command = new Command('remark')
    .description('Write a remark on a take, or on a moment of it.')
    .argument('<take>', 'its name on the list, or newest')
    .argument('<text>', 'the remark, in quotes')
    .option('--at <seconds>', 'the moment, in seconds from the start of the recording')
    .option('--by <name>', 'who writes it')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  return withLibraryOption(command).action(
    (typed: string, text: string, { at, by = '', ...option }: Options) =>
      inLibrary(option, async ({ db }) => {
        const moment = at === undefined ? null : Number(at);
        if (moment !== null && !(moment >= 0 && Number.isFinite(moment)))
          throw new CommandFault(
            'usage',
            `--at ${at} is no moment. Write seconds from the start, such as 12.5.`,
          );
        const takeId = await findTake(db, typed);
        const now = Date.now();
        const id = crypto.randomUUID();
        await writeRemark(db, { id, takeId, moment, text, author: by, writtenAt: now, changedAt: now });
        output.stdout(`Remark kept with take ${shortId(takeId)}.\n`);
      }),
  );
}
