import { Command } from 'commander';
import { takeTime } from '../../core/result/figures.ts';
import { momentOf } from '../../core/result/moment-of.ts';
import { readTake } from '../../library/read-take.ts';
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
  evenhand takes remark newest "Left hand waits here" --at 0:04.5 --by "Ms Oduya"
`;

/** Pins a remark to a take, or to a moment of it. */
export function takesRemarkCommand(output: CommandOutput): Command {
  const command = new Command('remark')
    .description('Write a remark on a take, or on a moment of it.')
    .argument('<take>', 'its name on the list, or newest')
    .argument('<text>', 'the remark, in quotes')
    .option('--at <moment>', 'the moment from the start of the take, such as 0:12.5')
    .option('--by <name>', 'who writes it')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  return withLibraryOption(command).action(
    (typed: string, text: string, { at, by = '', ...option }: Options) =>
      inLibrary(option, async ({ db }) => {
        const moment = at === undefined ? null : momentOf(at === '' ? '-' : at);
        if (Number.isNaN(moment))
          throw new CommandFault(
            'usage',
            `--at ${at} is no moment. Write it from the start of the take, such as 0:12.5 or 12.5.`,
          );
        const takeId = await findTake(db, typed);
        const { take } = await readTake(db, takeId);
        if (moment !== null && moment > take.duration)
          throw new CommandFault(
            'usage',
            `--at ${at} lies behind the end: the take is ${takeTime(take.duration)} long.`,
          );
        const now = Date.now();
        const id = crypto.randomUUID();
        await writeRemark(db, { id, takeId, moment, text, author: by, writtenAt: now, changedAt: now });
        output.stdout(`Remark kept with take ${shortId(takeId)}.\n`);
      }),
  );
}
