import { CommandFault } from './command-fault.ts';

interface NumberRange {
  readonly least: number;
  readonly most: number;
  readonly whole?: true;
}

/**
 * An option's number. Throws a usage fault that names the option, what was typed and what may be.
 *
 * @example numberOption('--count-in', '4', { least: 0, most: 64, whole: true }) // 4
 */
export function numberOption(option: string, typed: string, { least, most, whole }: NumberRange): number {
  const text = typed.trim().replace(',', '.');
  const value = /^\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
  const kind = whole ? 'a whole number' : 'a number';
  if (Number.isNaN(value) || value < least || value > most || (whole && !Number.isInteger(value)))
    throw new CommandFault('usage', `${option} ${typed} must be ${kind} from ${least} to ${most}.`);
  return value;
}
