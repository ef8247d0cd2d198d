import { settingRanges } from '../core/exercise/line-settings.ts';
import { risingSheet } from '../core/exercise/rising-sheet.ts';
import type { Sheet } from '../core/exercise/sheet.ts';
import { CommandFault } from './command-fault.ts';
import { numberOption } from './number-option.ts';

/** Options that make one exercise a row of lines, each faster than the one before. */
export const riseOptions = [
  {
    name: 'to',
    value: 'number',
    about: 'play it again and again, each time faster, from --bpm up to this tempo',
  },
  { name: 'step', value: 'number', about: 'beats per minute from one line to the next (5)' },
] as const;

const usualStep = 5;

/** A sheet of one line as it is, or line after line up to the tempo of `--to`. Throws a usage fault. */
export function withRise(sheet: Sheet, typed: Readonly<Record<string, unknown>>): Sheet {
  const { to, step } = typed;
  if (to === undefined && step === undefined) return sheet;
  const [line] = sheet.lines;
  if (typeof to !== 'string' || line === undefined)
    throw new CommandFault('usage', '--step goes with --to, the tempo that the last line has.');
  const { bpm } = line;
  if (bpm === null)
    throw new CommandFault('usage', '--to needs the tempo to begin at. Add it, such as --bpm 80.');
  const last = numberOption('--to', to, settingRanges.tempo);
  if (last <= bpm)
    throw new CommandFault('usage', `--to ${to} isn't faster than --bpm ${bpm}. Choose a faster tempo.`);
  const by = step === undefined ? usualStep : numberOption('--step', `${step}`, { least: 0.1, most: 200 });
  return risingSheet(line, { from: bpm, to: last, step: by });
}
