import { readFileSync } from 'node:fs';
import { Command } from 'commander';
import { rubrics } from '../core/scoring/rubrics/index.ts';
import { askedSheet } from './asked-sheet.ts';
import { chosenRubric } from './chosen-rubric.ts';
import { CommandFault } from './command-fault.ts';
import { type CommandOutput, toProcess } from './command-output.ts';
import { exitCodes } from './exit-codes.ts';
import type { GradedTake } from './library/keep-graded-take.ts';
import { checkKeepOptions, type KeepOptions, withKeepOptions } from './library/keep-options.ts';
import { shortId } from './library/short-id.ts';
import { inLibrary } from './library/with-library.ts';
import { lineOptions } from './line-options.ts';
import { openPlayed } from './open-played.ts';
import { checkOutputPaths, type FileOutputs } from './output-paths.ts';
import { progressLine, toldOpening } from './progress-line.ts';
import { riseOptions } from './rise-options.ts';
import { screenOf } from './screen.ts';
import { printable } from './text-layout.ts';
import { textSummary } from './text-summary.ts';
import { writeOutputs } from './write-outputs.ts';

interface Options extends KeepOptions {
  readonly exercise?: string;
  readonly sheet?: string;
  readonly rubric: string;
  readonly model?: string;
  readonly discomfort?: true;
  readonly keys?: string;
  readonly json?: string | true;
  readonly csv?: string;
  readonly report?: string;
  readonly sound: boolean;
  readonly pictures?: string;
  readonly [lineOption: string]: unknown;
}

const help = `
Examples:
  evenhand grade monday.wav --exercise ">RLR >LRL" --bpm 110 --times 8
  evenhand grade monday.wav --exercise triplet-2-hand-to-hand --bpm 110 --report monday.html
  evenhand grade monday.wav --sheet week-7.sheet --json monday.json --csv monday.csv
  evenhand grade monday.mid --sheet week-7.sheet --keys 38

An exercise is the name of a listed one (\`evenhand exercises\`) or your own notation: a group for
each beat, R and L for the hands, > before an accent. A sheet is a text file with a line for each
exercise, such as   >RLR >LRL ; times: 8 ; tempo: 110   and # before a remark.

A model is a teacher's take of the same line: grade it first with --json teacher.json, then hold
another take against it with --model teacher.json.

A MIDI file from an electronic pad is graded by its notes. Velocities are levels on a scale of
their own, which never compare with those of a recording.

The summary comes on the screen unless something else goes there. The exit code is 0 when the
take was graded, however low; 2 when this command can't be understood; 3 when the recording, the
sheet or the rubric can't be read; 4 when the take can't be graded (the outputs say why).
`;

function takeFrom(take: string | undefined, { json }: Options): string {
  if (take !== undefined) return take;
  const hint =
    typeof json === 'string'
      ? `"${json}" was taken as the file for --json. Put the recording first, or write --json=-.`
      : 'Name the recording of the take, such as `evenhand grade monday.wav --exercise ">RLR >LRL" --bpm 110`.';
  throw new CommandFault('usage', `There is no recording to grade. ${hint}`);
}

/**
 * The command that grades a take. The summary, or the one form of the result that is sent to `-`, goes to stdout,
 * all talk to stderr. Sets `process.exitCode` to 4 for a take that can't be graded; throws `CommandFault`.
 *
 * @example await gradeCommand(output).parseAsync(['take.wav', '--exercise', '>RLR >LRL'], { from: 'user' })
 */
export function gradeCommand(output: CommandOutput = toProcess): Command {
  const command = new Command('grade')
    .description('Grade a recorded take against what was to be played.')
    .argument('[take]', 'the recording (WAV, FLAC, MP3, M4A, Ogg, video, …); - reads it from a pipe')
    .option('--exercise <text>', 'what was played: name of an exercise, or notation in quotes')
    .option('--sheet <file>', 'what was played: a file with several exercises');
  for (const { name, value, about } of [...lineOptions, ...riseOptions])
    command.option(`--${name} <${value}>`, about);
  command
    .option(
      '--rubric <name>',
      `how strictly to score: ${rubrics.map(({ id }) => id).join(', ')}, or a file`,
      'steady',
    )
    .option('--model <file>', "hold it against a teacher's take of the same line: its result from --json")
    .option('--discomfort', 'something hurt or tingled: no advice to go faster')
    .option('--keys <numbers>', 'of a MIDI file: the keys that are the pad, such as 38,40')
    .option('--json [file]', 'write the whole result as JSON, on the screen without a file')
    .option('--csv <file>', 'write the strokes as a table for a spreadsheet')
    .option('--report <file>', 'write a report with pictures to open in a browser')
    .option('--no-sound', 'leave the sound of the take out of the report')
    .option('--pictures <folder>', 'write each picture as a PNG file');
  withKeepOptions(command)
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });

  return command.action(async (named: string | undefined, options: Options) => {
    const take = takeFrom(named, options);
    const { json, csv, report, pictures, sound, discomfort = false } = options;
    const files: FileOutputs = {
      ...(json === undefined ? {} : { json: json === true ? '-' : json }),
      ...(csv === undefined ? {} : { csv }),
      ...(report === undefined ? {} : { report }),
    };
    checkOutputPaths(files, pictures, [
      take,
      ...(options.sheet ? [options.sheet] : []),
      ...(options.model ? [options.model] : []),
      options.rubric,
    ]);
    checkKeepOptions(options);
    if (take === '-' && options.player !== undefined)
      throw new CommandFault(
        'usage',
        'What comes through a pipe is not kept. Name the file of the recording with --player.',
      );
    const rubric = await chosenRubric(options.rubric);
    const sheet = askedSheet(options);
    const model =
      options.model === undefined
        ? undefined
        : (await import('./chosen-model.ts')).chosenModel(options.model, sheet.lines);

    const progress = progressLine(process.stderr, () => performance.now());
    const keys = options.keys === undefined ? null : keysOf(options.keys);
    const played = await toldOpening(progress, (told) => openPlayed(take, keys, told));
    try {
      const { source, name } = played;
      const result = played.grade(sheet, {
        rubric,
        discomfort,
        ...(model ? { model } : {}),
        tell: progress.tell,
      });
      progress.end();
      if (result.grading.state === 'not-gradable') process.exitCode = exitCodes.notGradable;
      if (!Object.values(files).includes('-')) output.stdout(textSummary(result, screenOf()));
      await writeOutputs(result, { files, pictures, sound: sound ? source : null }, output);
      if (options.player !== undefined) await keep({ result, sheet, path: take, name }, options, output);
    } finally {
      played.close();
    }
  });
}

function keysOf(typed: string): number[] {
  const keys = typed.split(',').map((one) => (/^\s*\d{1,3}\s*$/.test(one) ? Number(one) : Number.NaN));
  if (keys.every((key) => key <= 127)) return keys;
  throw new CommandFault(
    'usage',
    `--keys "${typed}" isn't a list of MIDI keys. Write whole numbers from 0 to 127 with commas, such as 38,40.`,
  );
}

/** Keeps the take in the library, which loads only then. */
async function keep(
  taken: Omit<GradedTake, 'bytes'>,
  options: KeepOptions,
  output: CommandOutput,
): Promise<void> {
  const bytes = readFileSync(taken.path);
  const { id, outcome, player, newPlayer, day, ahead } = await inLibrary(
    options,
    async (library) => {
      const { keepGradedTake } = await import('./library/keep-graded-take.ts');
      return keepGradedTake(library, { ...taken, bytes }, options);
    },
    { make: true },
  );
  const under = `take ${shortId(id)}${player === '' ? '' : ` of ${printable(player)}`}${newPlayer ? ', a new player' : ''}`;
  output.stderr(outcome === 'kept' ? `Kept as ${under}.\n` : `It is kept already, as ${under}.\n`);
  if (outcome === 'kept' && ahead)
    output.stderr(
      `It counts for ${day}, which is yet to come by this computer's clock. Where that is wrong, set the clock, delete the take and keep it again with --day.\n`,
    );
}
