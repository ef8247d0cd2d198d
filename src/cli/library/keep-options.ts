import type { Command } from 'commander';
import { dayNumber } from '../../core/progress/day-number.ts';
import { CommandFault } from '../command-fault.ts';
import { type LibraryOption, withLibraryOption } from './with-library.ts';

export interface KeepOptions extends LibraryOption {
  readonly player?: string;
  readonly technique?: string;
  readonly pad?: string;
  readonly sticks?: string;
  readonly device?: string;
  readonly tag?: readonly string[];
  readonly day?: string;
}

/** Options that keep a take in the library. */
export function withKeepOptions(command: Command): Command {
  command
    .option('--player <name>', 'keep the take in the library, under this name')
    .option('--technique <words>', 'how it was played, as you call it; nothing of it is heard')
    .option('--pad <words>', 'what was played on; levels compare on the same pad only')
    .option('--sticks <words>', 'what it was played with')
    .option('--device <words>', 'what it was recorded with')
    .option('--tag <words...>', 'words to find it by')
    .option('--day <day>', "the day it was played, such as 2026-03-09 (the file's own)");
  return withLibraryOption(command);
}

/** Throws a usage fault for options that ask for keeping without a player, and for what is no day. */
export function checkKeepOptions(options: KeepOptions): void {
  const { player, day } = options;
  const loose = (['technique', 'pad', 'sticks', 'device', 'tag', 'day', 'library'] as const).find(
    (name) => options[name] !== undefined,
  );
  if (player === undefined && loose !== undefined)
    throw new CommandFault(
      'usage',
      `--${loose} goes with --player, which keeps the take. Add --player NAME.`,
    );
  if (player?.trim() === '')
    throw new CommandFault('usage', '--player has an empty name behind it. Write a name.');
  if (day !== undefined) checkDayOption('day', day);
}

/** Throws a usage fault for what is no calendar day. */
export function checkDayOption(option: string, day: string): void {
  try {
    dayNumber(day);
  } catch {
    throw new CommandFault('usage', `--${option} ${day} is no day. Write it as 2026-03-09.`);
  }
}
