import type { Command } from 'commander';
import { practiceCare } from '../../core/progress/practice-words.ts';
import { counted } from '../../core/result/figures.ts';
import { writeDiscomfort, writePractice } from '../../library/practice.ts';
import { CommandFault } from '../command-fault.ts';
import type { CommandOutput } from '../command-output.ts';
import { numberOption } from '../number-option.ts';
import { hanging, printable } from '../text-layout.ts';
import { findPlayer } from './find-player.ts';
import { checkDayOption } from './keep-options.ts';
import { localDay } from './local-day.ts';
import { shortId } from './short-id.ts';
import { inLibrary, type LibraryOption, libraryCommand, withExamples } from './with-library.ts';

interface Options extends LibraryOption {
  readonly player: string;
  readonly day?: string;
  readonly right?: string;
  readonly left?: string;
  readonly note?: string;
}

const dayMinutes = { least: 1, most: 1440 };
const handStrokes = { least: 0, most: 200_000, whole: true } as const;

/** A day that was, today without one. Throws a usage fault for what is no day or is yet to come. */
function playedDay(day: string | undefined): string {
  const today = localDay(new Date());
  if (day === undefined) return today;
  checkDayOption('day', day);
  if (day > today)
    throw new CommandFault('usage', `--day ${day} is yet to come. Write a day up to today, ${today}.`);
  return day;
}

/** Writes down minutes that weren't recorded. */
export function practiceLogCommand(output: CommandOutput): Command {
  const command = libraryCommand('log', output)
    .description("Write down minutes of practice that weren't recorded.")
    .argument('<minutes>', 'how long')
    .requiredOption('--player <name>', 'who')
    .option('--day <day>', 'when, such as 2026-03-09 (today)')
    .option('--right <strokes>', 'strokes of the right hand, if counted')
    .option('--left <strokes>', 'strokes of the left hand, if counted')
    .option('--note <words>', 'what it was');
  return withExamples(
    command,
    'practice log 25 --player Mirelle --note "Warm-up without the phone"',
    'practice log 40 --player Mirelle --day 2026-03-09 --right 2400 --left 2400',
  ).action((typed: string, options: Options) => {
    const minutes = numberOption('Minutes of practice:', typed, dayMinutes);
    const strokes = (hand: 'right' | 'left') => {
      const typed = options[hand];
      return typed === undefined ? null : numberOption(`--${hand}`, typed, handStrokes);
    };
    const day = playedDay(options.day);
    const [strokesRight, strokesLeft] = [strokes('right'), strokes('left')];
    return inLibrary(options, async ({ db }) => {
      const { id: personId, name } = await findPlayer(db, options.player);
      const id = crypto.randomUUID();
      const note = printable(options.note ?? '');
      await writePractice(db, { id, personId, day, minutes, strokesRight, strokesLeft, note });
      output.stdout(
        `${shortId(id)}  ${counted(minutes, 'minute')} of ${printable(name)} on ${day} written down.\n`,
      );
    });
  });
}

/** Keeps a private note that something hurts or tires. */
export function practiceDiscomfortCommand(output: CommandOutput): Command {
  const command = libraryCommand('discomfort', output)
    .description('Write a private note that something hurts or tires; tempo advice waits for a week.')
    .argument('<text>', 'what, in quotes')
    .requiredOption('--player <name>', 'who')
    .option('--day <day>', 'when, such as 2026-03-09 (today)');
  return withExamples(
    command,
    'practice discomfort "Left wrist tired after the long evening" --player Mirelle',
  ).action((text: string, options: Options) => {
    if (printable(text) === '')
      throw new CommandFault('usage', 'The note is empty. Write in quotes what hurts or tires.');
    const day = playedDay(options.day);
    return inLibrary(options, async ({ db }) => {
      const { id: personId, name } = await findPlayer(db, options.player);
      const id = crypto.randomUUID();
      await writeDiscomfort(db, { id, personId, day, text: printable(text) });
      output.stdout(
        `${shortId(id)}  Noted for ${printable(name)} on ${day}. No tempo is advised for a week; delete the note when it is gone.\n${hanging('', practiceCare, 88).join('\n')}\n`,
      );
    });
  });
}
