import { Command } from 'commander';
import { readMask } from '../core/exercise/accent-masks.ts';
import { type ExerciseFilter, findExercise, listExercises } from '../core/exercise/catalogue.ts';
import { divisions } from '../core/exercise/divisions.ts';
import { faultText } from '../core/exercise/fault-text.ts';
import { limits } from '../core/exercise/limits.ts';
import { lineFromText } from '../core/exercise/line-from-text.ts';
import { nearestText } from '../core/exercise/nearest-text.ts';
import { notationColumns } from '../core/exercise/notation-columns.ts';
import type { SheetLine } from '../core/exercise/sheet.ts';
import { findSticking, stickingsFor } from '../core/exercise/stickings.ts';
import { type CommandOutput, toProcess } from './command-output.ts';
import { exitCodes } from './exit-codes.ts';

interface Options {
  readonly accents?: string;
  readonly sticking?: string;
  readonly division?: string;
  readonly find?: string;
  readonly json?: true;
}

const help = `
Examples:
  evenhand exercises --accents 1+2 --sticking doubles
  evenhand exercises triplet-2-hand-to-hand
  evenhand exercises "R>LR L>RL"

The second shows one exercise with its counts and hands. The third shows notation of
your own: a group for each beat, R and L for the hands, > before an accent, - for a rest,
small r or l before a stroke for a grace note, z behind it for a buzz, | between bars.
Put -left behind a name to begin with the left hand. If your notation begins with a rest,
write -- before it.
`;

/** The filter that the options ask for, or a sentence about the option that can't be understood. */
function filterFrom({ accents, sticking, division, find }: Options): ExerciseFilter | string {
  const parts = divisions.map((one) => one.parts);
  const wanted = divisions.find(
    (one) => `${one.parts}` === division?.trim() || one.id === division?.trim().toLowerCase(),
  );
  if (division !== undefined && wanted === undefined) {
    const known = divisions.map((one) => `${one.parts} (${one.name.toLowerCase()})`).join(', ');
    return `--division ${division} is unknown. Choose one of ${known}.`;
  }
  if (accents !== undefined && readMask(accents, limits.divisions) === null) {
    return `--accents ${accents} can't be read. Write the accented notes of the beat, such as 2 or 1+3, or all, or none.`;
  }
  if (sticking !== undefined && parts.every((one) => findSticking(sticking, one) === null)) {
    const ids = [...new Set(parts.flatMap((one) => stickingsFor(one).map(({ id }) => id)))];
    const nearest = nearestText(sticking, ids);
    const meant = nearest === '' ? '' : ` Did you mean ${nearest}?`;
    return `--sticking ${sticking} is unknown.${meant} Write one such as hand-to-hand, doubles, triples or RLRRLL.`;
  }
  return {
    ...(wanted === undefined ? {} : { division: wanted.parts }),
    ...(accents === undefined ? {} : { accents }),
    ...(sticking === undefined ? {} : { sticking }),
    ...(find === undefined ? {} : { text: find }),
  };
}

function asJson(id: string, name: string, notation: string): object {
  const exercise = findExercise(id);
  if (exercise === null) return { id, name, notation };
  const { description, division, accents, sticking, lead } = exercise;
  const shared = { id, name, notation, description, division: division.parts, accents };
  return { ...shared, sticking: sticking.id, lead };
}

function listAsText(filter: ExerciseFilter): string {
  const found = listExercises(filter);
  const width = Math.max(...found.map(({ id }) => id.length)) + 2;
  return found.map(({ id, notation }) => `${id.padEnd(width)}${notation}\n`).join('');
}

function lineAsText({ id, label, notation, beats, beatsInBar }: SheetLine): string {
  const about = findExercise(id)?.description;
  const head = about === undefined ? [label] : [id, about, '', notation];
  return `${[...head, '', notationColumns(beats, beatsInBar)].join('\n')}\n`;
}

/**
 * The command that lists the catalogue's exercises, narrows the list, or shows one exercise or notation laid out
 * in columns. The result goes to stdout, everything else to stderr; what can't be understood ends with exit code 2.
 *
 * @example await exercisesCommand(output).parseAsync(['--accents', '1+2'], { from: 'user' })
 */
export function exercisesCommand(output: CommandOutput = toProcess): Command {
  const command = new Command('exercises')
    .description('List the exercises, or show one with its counts and hands.')
    .argument('[exercise]', 'name of an exercise, or notation in quotes')
    .option('--accents <notes>', 'accented notes of the beat, such as 2 or 1+3, or all, or none')
    .option('--sticking <name>', 'hand-to-hand, doubles, triples, or the hands such as RLRRLL')
    .option('--division <parts>', 'notes in a beat, such as 3 for triplets')
    .option('--find <words>', 'words that must all occur in the name or description')
    .option('--json', 'write JSON')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });

  const refuse = (sentence: string): never => command.error(sentence, { exitCode: exitCodes.usage });

  return command.action((text: string | undefined, options: Options) => {
    const { json, ...narrowing } = options;
    const writeJson = (value: unknown) => output.stdout(`${JSON.stringify(value, null, 2)}\n`);

    if (text !== undefined) {
      if (Object.keys(narrowing).length > 0) refuse('Name an exercise or narrow the list, not both at once.');
      const parsed = lineFromText(text);
      if (!parsed.ok) return refuse(faultText(text, parsed.fault));
      const { id, label, notation } = parsed.line;
      return json ? writeJson(asJson(id, label, notation)) : output.stdout(lineAsText(parsed.line));
    }

    const filter = filterFrom(narrowing);
    if (typeof filter === 'string') return refuse(filter);
    const found = listExercises(filter);
    if (json) return writeJson(found.map(({ id, name, notation }) => asJson(id, name, notation)));
    if (found.length === 0) {
      return output.stderr('No exercise fits. Leave out one of the options to see more.\n');
    }
    output.stdout(listAsText(filter));
    const count = found.length === 1 ? '1 exercise' : `${found.length} exercises`;
    output.stderr(`${count}. \`evenhand exercises NAME\` shows one with its counts and hands.\n`);
  });
}
