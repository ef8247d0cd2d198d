import { Command } from 'commander';
import { counted } from '../../core/result/figures.ts';
import { changeTake } from '../../library/change-take.ts';
import { listedTakes } from '../../library/listed-takes.ts';
import { giveTake } from '../../library/move-people.ts';
import { nameKey } from '../../library/name-key.ts';
import { CommandFault } from '../command-fault.ts';
import type { CommandOutput } from '../command-output.ts';
import { findPlayer } from './find-player.ts';
import { findTake } from './find-take.ts';
import { inLibrary, type LibraryOption, withLibraryOption } from './with-library.ts';

interface Options extends LibraryOption {
  readonly player?: string;
  readonly technique?: string;
  readonly pad?: string;
  readonly sticks?: string;
  readonly device?: string;
  readonly tag?: readonly string[];
  readonly untag?: readonly string[];
}

const help = `
Examples:
  evenhand takes change newest --pad "gum pad" --sticks hickory --tag lesson
  evenhand takes change newest --player Mirelle --untag lesson

Levels are compared only between takes with the same pad, sticks and device noted. An empty text
in quotes takes a note away. The result stays as it was graded.
`;

/** Changes what is noted of kept takes, and whose they are. */
export function takesChangeCommand(output: CommandOutput): Command {
  const command = new Command('change')
    .description('Change what is noted of takes: whose, technique, pad, sticks, device, tags.')
    .argument('<takes...>', 'their names on the list, or newest')
    .option('--player <name>', 'whose they are')
    .option('--technique <words>', 'how they were played, as you call it')
    .option('--pad <words>', 'what was played on')
    .option('--sticks <words>', 'what they were played with')
    .option('--device <words>', 'what they were recorded with')
    .option('--tag <words...>', 'words to find them by, besides those they have')
    .option('--untag <words...>', 'words to take away')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  return withLibraryOption(command).action((typed: string[], options: Options) => {
    const { library, player, tag = [], untag = [], ...details } = options;
    const asked = Object.keys(details).length + tag.length + untag.length + (player === undefined ? 0 : 1);
    if (asked === 0)
      throw new CommandFault('usage', 'Nothing to change is named. Add --pad, --tag or another option.');
    return inLibrary(options, async ({ db }) => {
      const ids = await Promise.all(typed.map((name) => findTake(db, name)));
      const personId = player === undefined ? undefined : (await findPlayer(db, player)).id;
      const away = new Set(untag.map(nameKey));
      for (const { id, tags } of await listedTakes(db, [...new Set(ids)])) {
        const kept = [...tags, ...tag].filter((one) => !away.has(nameKey(one)));
        await changeTake(db, { id, ...details, tags: kept });
        if (personId !== undefined) await giveTake(db, { takeId: id, personId });
      }
      const count = new Set(ids).size;
      output.stdout(`${counted(count, 'take')} changed.\n`);
    });
  });
}
