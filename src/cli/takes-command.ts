import { Command } from 'commander';
import { settingRanges } from '../core/exercise/line-settings.ts';
import type { LibraryDb } from '../library/library.ts';
import { countTakes, listTakes, type PageKey, type TakeOrder } from '../library/list-takes.ts';
import { readTake } from '../library/read-take.ts';
import type { TakeFilter } from '../library/take-filter.ts';
import { CommandFault } from './command-fault.ts';
import { type CommandOutput, toProcess } from './command-output.ts';
import { findPlayer } from './library/find-player.ts';
import { findTake } from './library/find-take.ts';
import { checkDayOption } from './library/keep-options.ts';
import { shortId } from './library/short-id.ts';
import { takeList } from './library/take-list.ts';
import { takesChangeCommand } from './library/takes-change.ts';
import { takesDeleteCommand } from './library/takes-delete.ts';
import { takesExportCommand } from './library/takes-export.ts';
import { takesImportCommand } from './library/takes-import.ts';
import { takesRegradeCommand } from './library/takes-regrade.ts';
import { takesRemarkCommand } from './library/takes-remark.ts';
import { takesShowCommand } from './library/takes-show.ts';
import {
  inLibrary,
  type LibraryOption,
  withLibraryOption,
  withLibraryParts,
} from './library/with-library.ts';
import { numberOption } from './number-option.ts';

interface Options extends LibraryOption {
  readonly player?: string;
  readonly exercise?: string;
  readonly find?: string;
  readonly tag?: string;
  readonly technique?: string;
  readonly bpm?: string;
  readonly after?: string;
  readonly since?: string;
  readonly until?: string;
  readonly order: string;
  readonly limit: string;
  readonly json?: true;
}

const orders: readonly TakeOrder[] = ['newest', 'oldest', 'cleanest'];

const help = `
Examples:
  evenhand takes
  evenhand takes --player Mirelle --since 2026-01-01 --order cleanest
  evenhand takes --bpm 90..150
  evenhand takes show newest

A take comes into the library when it is graded for a player: \`evenhand grade … --player NAME\`.
On the list each has a short name such as 3f0a91c2; commands want that, or newest.
`;

/** What the options narrow the list to. Throws a usage fault. */
async function takeFilter(db: LibraryDb, options: Partial<Options>): Promise<TakeFilter> {
  const { player, exercise, find, tag, technique, bpm, since, until } = options;
  if (since !== undefined) checkDayOption('since', since);
  if (until !== undefined) checkDayOption('until', until);
  return {
    ...(player === undefined ? {} : { personId: (await findPlayer(db, player)).id }),
    exerciseId: exercise,
    title: find,
    tag,
    technique,
    ...tempos(bpm),
    fromDay: since,
    toDay: until,
  };
}

/** Takes listed at once: a screen or two can be looked through, more is a file's business. Our judgement. */
const mostListed = 200;

/** `96` or `90..110`. */
function tempos(typed: string | undefined): Pick<TakeFilter, 'fromBpm' | 'toBpm'> {
  if (typed === undefined) return {};
  const texts = typed.split('..');
  if (texts.length > 2 || texts.some((text) => text.trim() === ''))
    throw new CommandFault('usage', `--bpm ${typed} can't be. Write a tempo, or two: --bpm 90..110.`);
  const [from = 0, to = from] = texts.map((text) => numberOption('--bpm', text, settingRanges.tempo));
  if (from > to)
    throw new CommandFault('usage', `--bpm ${typed} doesn't rise. Write the slower tempo first.`);
  return { fromBpm: from, toBpm: to };
}

/** Where on the list the page begins. */
async function pageAfter(db: LibraryDb, typed: string | undefined): Promise<PageKey | null> {
  if (typed === undefined) return null;
  const { take } = await readTake(db, await findTake(db, typed));
  return { score: take.score, recordedAt: take.recordedAt, id: take.id };
}

/** The command that lists kept takes, and whose parts show, pass on, delete, remark and grade them again. */
export function takesCommand(output: CommandOutput = toProcess): Command {
  const command = new Command('takes')
    .description('List the takes that are kept; show, note, export, delete or grade them again.')
    .option('--player <name>', 'of one player')
    .option('--exercise <name>', 'with this exercise in them')
    .option('--find <words>', "words in the sheet's title")
    .option('--tag <word>', 'with this tag')
    .option('--technique <word>', 'played with this technique')
    .option('--bpm <tempo>', 'at this tempo, or between two: 90..110')
    .option('--since <day>', 'from this day on, such as 2026-03-09')
    .option('--until <day>', 'up to this day')
    .option('--order <order>', `which come first: ${orders.join(', ')}`, 'newest')
    .option('--limit <number>', 'how many at most', '30')
    .option('--after <take>', 'those that follow this one on the list')
    .option('--json', 'write JSON')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  withLibraryOption(command);
  withLibraryParts(
    command,
    [
      takesShowCommand,
      takesExportCommand,
      takesImportCommand,
      takesChangeCommand,
      takesRemarkCommand,
      takesRegradeCommand,
      takesDeleteCommand,
    ].map((part) => part(output)),
  );

  return command.action((options: Options) =>
    inLibrary(options, async ({ db }) => {
      const order = orders.find((one) => one === options.order);
      if (order === undefined)
        throw new CommandFault('usage', `--order ${options.order} is unknown. Choose ${orders.join(', ')}.`);
      const limit = numberOption('--limit', options.limit, { least: 1, most: mostListed, whole: true });
      const filter = await takeFilter(db, options);
      const after = await pageAfter(db, options.after);
      const { takes, next } = await listTakes(db, { filter, order, limit, after });
      if (options.json) return output.stdout(`${JSON.stringify(takes, null, 2)}\n`);
      if (takes.length === 0)
        return output.stderr('No take is kept that fits. `evenhand takes --help` tells more.\n');
      output.stdout(`${takeList(takes).join('\n')}\n`);
      if (next !== null)
        output.stderr(
          `${takes.length} of ${await countTakes(db, filter)} takes. --limit shows more at once, --after ${shortId(next.id)} those that follow.\n`,
        );
    }),
  );
}
