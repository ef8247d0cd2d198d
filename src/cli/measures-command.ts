import { Command } from 'commander';
import { nearestText } from '../core/exercise/nearest-text.ts';
import { bestWords, unitWords } from '../core/measures/measure-words.ts';
import { measureNames } from '../core/result/measure-names.ts';
import { pointsSentences } from '../core/scoring/handbook-text.ts';
import { type HandbookEntry, measureHandbook } from '../core/scoring/measure-handbook.ts';
import { type CommandOutput, toProcess } from './command-output.ts';
import { exitCodes } from './exit-codes.ts';
import { hanging, wrapped } from './text-layout.ts';

const width = 90;

const help = `
Examples:
  evenhand measures
  evenhand measures timing-spread
  evenhand measures accent-to-tap-ratio --json

The second tells all about one measure: formula, range, how to read it, where the points
of the rubrics lie, and what it can't tell. A name as summaries show it does as well, such
as "Slow wander".
`;

function listAsText(entries: readonly HandbookEntry[]): string {
  const longest = Math.max(...entries.map(({ id }) => id.length)) + 2;
  return entries
    .flatMap(({ id, name }) => hanging(id.padEnd(longest), `${name}: ${measureNames[id]!.says}`, width + 10))
    .map((line) => `${line}\n`)
    .join('');
}

const part = (head: string, texts: readonly string[]): string[] =>
  texts.length === 0
    ? []
    : ['', head, ...texts.flatMap((text) => hanging(texts.length > 1 ? '  - ' : '  ', text, width))];

function entryAsText(entry: HandbookEntry): string {
  const { id, name, unit, better, describes, formula, interval, reading, limits } = entry;
  return `${[
    `${name} (${id}), in ${unitWords[unit]}, ${bestWords[better]}`,
    '',
    ...wrapped(describes, width),
    ...part('Formula', [formula]),
    ...part('Range', [interval]),
    ...part('How to read it', [reading]),
    ...part('Points', pointsSentences(entry.points, unit)),
    ...part('Its limits', limits),
    ...part('Instead of a figure, for example', entry.refusals),
    ...part('Source', [entry.source]),
  ].join('\n')}\n`;
}

/**
 * The command that lists the measures, or tells all about one by its id or name, as text or JSON. An unknown one ends
 * with exit code 2 and the nearest that there is.
 *
 * @example await measuresCommand(output).parseAsync(['timing-spread'], { from: 'user' })
 */
export function measuresCommand(output: CommandOutput = toProcess): Command {
  const command = new Command('measures')
    .description('List what is measured, or explain one measure: formula, range, reading, limits.')
    .argument('[measure]', 'id or name of a measure')
    .option('--json', 'write JSON')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });

  return command.action((named: string | undefined, { json }: { readonly json?: true }) => {
    const entries = measureHandbook();
    const writeJson = (value: unknown) => output.stdout(`${JSON.stringify(value, null, 2)}\n`);
    if (named === undefined) {
      if (json) return writeJson(entries);
      output.stdout(listAsText(entries));
      output.stderr(`${entries.length} measures. \`evenhand measures ID\` explains one.\n`);
      return;
    }
    const asked = named.trim().toLowerCase();
    const found = entries.find(({ id, name }) => id === asked || name.toLowerCase() === asked);
    if (found === undefined) {
      const nearest = nearestText(
        asked,
        entries.map(({ id }) => id),
      );
      const meant = nearest === '' ? '`evenhand measures` lists them.' : `Did you mean ${nearest}?`;
      return command.error(`There is no measure "${named}". ${meant}`, { exitCode: exitCodes.usage });
    }
    if (json) return writeJson(found);
    output.stdout(entryAsText(found));
  });
}
