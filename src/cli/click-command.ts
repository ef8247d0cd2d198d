import { Command } from 'commander';
import type { ClickPlan } from '../core/click-track/click-plan.ts';
import { planClicks } from '../core/click-track/plan-clicks.ts';
import { clickBlocks, trackLength } from '../core/click-track/render-clicks.ts';
import { takeTime } from '../core/result/figures.ts';
import { outputFaultSentence } from '../formats/output-fault-sentence.ts';
import { wavBlocks } from '../formats/wav-blocks.ts';
import { type FileContents, writeAtomically } from '../formats/write-atomically.ts';
import { askedSheet } from './asked-sheet.ts';
import { clickOptions, clickSounds, type TypedClick } from './click-options.ts';
import { CommandFault } from './command-fault.ts';
import { type CommandOutput, toProcess } from './command-output.ts';
import { lineOptions } from './line-options.ts';
import { checkOutputPaths, type FileOutputs } from './output-paths.ts';
import { riseOptions } from './rise-options.ts';

interface Options extends TypedClick {
  readonly exercise?: string;
  readonly sheet?: string;
  readonly wav?: string;
  readonly json?: string | true;
  readonly rate: string;
  readonly bits: string;
  readonly [lineOption: string]: unknown;
}

const help = `
Examples:
  evenhand click --exercise ">RLR >LRL" --bpm 110 --times 8 --wav click.wav
  evenhand click --sheet week-7.sheet --bell --divide 3 --wav click.wav
  evenhand click --exercise ">RLR >LRL" --bpm 96 --times 24 --silent 1,2,4 --wav click.wav
  evenhand click --exercise ">RLR >LRL" --bpm 80 --to 130 --step 10 --times 8 --wav click.wav
  evenhand click --exercise ">RLR >LRL" --bpm 110 --json

A bar is counted in first. --silent 1,2,4 leaves one bar silent after two that are heard, then
two, then four, and four from there on. Every click begins at the sample nearest to its time.
--json writes when each click sounds, in seconds, of what kind it is, and whether it is heard.

Keep the click low in headphones: loud clicks over a long time harm hearing.
`;

const depths = { '16': 'int16', '24': 'int24' } as const;
const rates = ['44100', '48000'];

/** Options of a line that change its click; the others don't sound. */
const sounding = lineOptions.filter(({ name }) => ['bpm', 'times', 'bar'].includes(name));

/** What is written, or a usage fault. */
function outputs({ wav, json, rate, bits }: Options): FileOutputs & { readonly depth: 'int16' | 'int24' } {
  if (!rates.includes(rate))
    throw new CommandFault('usage', `--rate ${rate} can't be written. Choose 44100 or 48000.`);
  if (bits !== '16' && bits !== '24')
    throw new CommandFault('usage', `--bits ${bits} can't be written. Choose 16 or 24.`);
  if (wav === undefined && json === undefined)
    throw new CommandFault('usage', 'Name a file for the click, such as --wav click.wav, or add --json.');
  return {
    depth: depths[bits],
    ...(wav === undefined ? {} : { wav }),
    ...(json === undefined ? {} : { json: json === true ? '-' : json }),
  };
}

const planText = (plan: ClickPlan) => `${JSON.stringify(plan)}\n`;

/**
 * The command that writes a sheet's click track as a wave file, and its plan as JSON. What goes to `-` goes to stdout,
 * talk to stderr. Throws `CommandFault`.
 *
 * @example await clickCommand(output).parseAsync(['--exercise', '>RLR', '--bpm', '90', '--json'], { from: 'user' })
 */
export function clickCommand(output: CommandOutput = toProcess): Command {
  const command = new Command('click')
    .description('Write the click for an exercise or a sheet as a sound file to play to.')
    .option('--exercise <text>', 'what is played: name of an exercise, or notation in quotes')
    .option('--sheet <file>', 'what is played: a file with several exercises');
  for (const { name, value, about } of sounding)
    command.option(`--${name} <${value}>`, name === 'bpm' ? 'tempo in beats per minute' : about);
  for (const { name, value, about } of riseOptions) command.option(`--${name} <${value}>`, about);
  return command
    .option('--sound <name>', `how it sounds: ${clickSounds.join(', ')} (wood)`)
    .option('--divide <parts>', 'softer clicks that divide the beat: 2, 3, 4 or 6')
    .option('--bell', "a bell on every bar's first beat")
    .option('--count-in <beats>', 'beats counted in first (one bar)')
    .option('--silent <bars>', 'bars left silent in turn, such as 1,2,4')
    .option('--heard <bars>', 'bars heard before each silence (2)')
    .option('--wav <file>', 'the sound file to write; - is a pipe')
    .option('--rate <hertz>', '44100 or 48000 samples a second', '48000')
    .option('--bits <number>', '16 or 24 bits a sample', '16')
    .option('--json [file]', 'write the plan of the clicks as JSON, on the screen without a file')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr })
    .action((options: Options) => {
      const { depth, ...files } = outputs(options);
      checkOutputPaths(files, undefined, options.sheet === undefined ? [] : [options.sheet]);
      const sheet = askedSheet(options, (sentence) => output.stderr(`${sentence}\n`));
      if (sheet.lines.some(({ bpm }) => bpm === null))
        throw new CommandFault(
          'usage',
          options.sheet === undefined
            ? 'A click needs a tempo. Add it, such as --bpm 110.'
            : 'A click needs a tempo. Write it into the sheet, such as "tempo: 110" as a line of its own at the top.',
        );
      const plan = planClicks(sheet, clickOptions(options));
      if (files.json === '-') output.stdout(planText(plan));
      else if (files.json !== undefined) write(files.json, planText(plan), output);
      if (files.wav === undefined) return;
      const sampleRate = Number(options.rate);
      const frames = trackLength(plan, sampleRate);
      const sound = wavBlocks({ blocks: clickBlocks(plan, sampleRate), frames, sampleRate, depth });
      if (files.wav === '-') for (const block of sound) output.bytes?.(block);
      else {
        write(files.wav, sound, output);
        if (files.json !== '-') output.stdout(planWords(plan));
      }
    });
}

function planWords({ clicks, firstBeat, duration }: ClickPlan): string {
  const beats = clicks.filter(({ kind }) => kind === 'bar' || kind === 'beat');
  const silent = beats.filter(({ audible }) => !audible).length;
  const left = silent === 0 ? '' : `, ${silent} of them silent`;
  return `${takeTime(duration)} in all. The first beat comes at ${takeTime(firstBeat)}; ${beats.length} beats${left}.\n`;
}

function write(path: string, contents: FileContents, output: CommandOutput): void {
  const fault = writeAtomically(path, contents);
  if (fault !== undefined) throw new CommandFault('fault', outputFaultSentence(path, fault));
  output.stderr(`Wrote ${path}.\n`);
}
