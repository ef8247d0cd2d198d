import { faultText } from '../core/exercise/fault-text.ts';
import { limits } from '../core/exercise/limits.ts';
import { lineFromText } from '../core/exercise/line-from-text.ts';
import type { Sheet } from '../core/exercise/sheet.ts';
import { beginsLikeScore } from '../formats/music-xml/score-text.ts';
import { readSheetFile } from '../formats/read-sheet-file.ts';
import { CommandFault } from './command-fault.ts';
import { lineOptions, settingsFromOptions } from './line-options.ts';
import { readSmallFile, readTextFile } from './read-text-file.ts';
import { riseOptions, withRise } from './rise-options.ts';

/** What was typed to say what was played. */
interface AskedFor {
  readonly exercise?: string;
  readonly sheet?: string;
  readonly [lineOption: string]: unknown;
}

const toStderr = (sentence: string) => void process.stderr.write(`${sentence}\n`);

/**
 * What the player was asked to play: one exercise with its options, or a sheet's file. Throws a usage fault for
 * options that can't be understood, an unreadable-input fault for a sheet that can't be read; its faults are shown
 * with line and column. What was left out of a score or added to it goes to `tell`.
 */
export function askedSheet(typed: AskedFor, tell: (sentence: string) => void = toStderr): Sheet {
  const { exercise, sheet } = typed;
  if (exercise !== undefined && sheet !== undefined)
    throw new CommandFault('usage', 'Give either --exercise or --sheet, not both.');
  if (sheet !== undefined) return sheetFromFile(sheet, typed, tell);
  if (exercise !== undefined) return sheetFromExercise(exercise, typed);
  throw new CommandFault(
    'usage',
    'What was played isn\'t said. Add --exercise, such as --exercise ">RLR >LRL" --bpm 110, or --sheet with a file.',
  );
}

function sheetFromFile(path: string, typed: AskedFor, tell: (sentence: string) => void): Sheet {
  const surplus = lineOptions.find(({ name }) => typed[name] !== undefined);
  if (surplus)
    throw new CommandFault(
      'usage',
      `--${surplus.name} goes with --exercise; write "${surplus.setting}:" into the sheet instead.`,
    );
  const rising = riseOptions.find(({ name }) => typed[name] !== undefined);
  if (rising)
    throw new CommandFault('usage', `--${rising.name} goes with --exercise; a sheet has its own tempos.`);
  const { sheet, notes } = sheetOfFile(path);
  for (const note of notes) tell(note);
  return sheet;
}

/** A sheet's file, text or MusicXML, and sentences on what was left out of a score or added to it. */
export function sheetOfFile(path: string): { readonly sheet: Sheet; readonly notes: readonly string[] } {
  const bytes = readSmallFile(path, 'sheet');
  const text = beginsLikeScore(bytes) ? null : readTextFile(path, 'sheet');
  const read = readSheetFile(text === null ? bytes : new TextEncoder().encode(text));
  if (read.ok) return read;
  throw new CommandFault('unreadableInput', read.faults.map((fault) => `${path}: ${fault}`).join('\n'));
}

function sheetFromExercise(text: string, typed: AskedFor): Sheet {
  const parsed = lineFromText(text, settingsFromOptions(typed));
  if (!parsed.ok) throw new CommandFault('usage', `--exercise: ${faultText(text, parsed.fault)}`);
  const { line } = parsed;
  const sheet = withRise({ title: line.label, lines: [line] }, typed);
  const inOne = line.repeats * line.beats.flatMap((beat) => beat.partials.filter(Boolean)).length;
  const strokes = inOne * sheet.lines.length;
  if (strokes > limits.sheetStrokes)
    throw new CommandFault(
      'usage',
      `--times ${line.repeats} makes ${strokes} strokes; ${limits.sheetStrokes} at most can be graded. Choose fewer times.`,
    );
  return sheet;
}
