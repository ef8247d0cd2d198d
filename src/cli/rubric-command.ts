import { Command } from 'commander';
import type { Rubric, RubricChanges } from '../core/scoring/rubric.ts';
import { rubrics } from '../core/scoring/rubrics/index.ts';
import { steady } from '../core/scoring/rubrics/steady.ts';
import { chosenRubric } from './chosen-rubric.ts';
import { type CommandOutput, toProcess } from './command-output.ts';
import { rubricTable } from './rubric-table.ts';

const width = 90;

const help = `
Examples:
  evenhand rubric
  evenhand rubric advanced
  evenhand rubric first-years --json

The last one prints a rubric to start from. Save it, change what you like, leave out what
stays as it is, and look at yours by naming the file instead. A weight of 0 takes a figure
or a whole dimension out of the score. Grade with yours by --rubric and the file.
`;

/** A shipped rubric as a teacher's file that says the same: every point and weight stands in it to be changed. */
export function rubricToStartFrom({ id, title, dimensions }: Rubric): RubricChanges {
  return {
    basedOn: id,
    id: `my-${id}`,
    title: `${title}, my own`,
    dimensions: Object.fromEntries(dimensions.map((d) => [d.id, { weight: d.weight }])),
    measures: Object.fromEntries(
      dimensions.flatMap((d) => d.criteria).map(({ measure, ...points }) => [measure, points]),
    ),
  };
}

function listAsText(): string {
  const longest = Math.max(...rubrics.map(({ id }) => id.length)) + 2;
  return rubrics.map(({ id, title }) => `${id.padEnd(longest)}${title}\n`).join('');
}

/**
 * The command that lists the rubrics, shows one, or a teacher's file after checking it, as a table with the sources of
 * its points, or as JSON to start from. A file's fault is told with its place and what may stand there.
 *
 * @example await rubricCommand(output).parseAsync(['steady'], { from: 'user' })
 */
export function rubricCommand(output: CommandOutput = toProcess): Command {
  return new Command('rubric')
    .description('Show how figures become scores, or check a rubric of your own.')
    .argument('[rubric]', 'name of a rubric, or a file')
    .option('--json', 'write a file to start from')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr })
    .action(async (named: string | undefined, { json }: { readonly json?: true }) => {
      if (named === undefined && !json) {
        output.stdout(listAsText());
        output.stderr('`evenhand rubric NAME` shows one with its points.\n');
        return;
      }
      const shipped = rubrics.find(({ id }) => id === (named ?? steady.id).trim().toLowerCase());
      const rubric = shipped ?? (await chosenRubric(named!));
      if (!json) return output.stdout(`${rubricTable(rubric, width).join('\n')}\n`);
      const value = shipped ? rubricToStartFrom(shipped) : rubric;
      output.stdout(`${JSON.stringify(value, null, 2)}\n`);
    });
}
