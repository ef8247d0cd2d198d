import { readFileSync, statSync } from 'node:fs';
import { CommandFault } from './command-fault.ts';

/** No sheet and no rubric is longer; a recording named by mistake is. */
const mostBytes = 4_000_000;

const fail = (sentence: string) => new CommandFault('unreadableInput', sentence);

/**
 * Bytes of a file that a person wrote. `what` names it in a sentence, such as "sheet". Throws an unreadable-input
 * fault.
 */
export function readSmallFile(path: string, what: string): Uint8Array {
  try {
    const status = statSync(path);
    if (status.isDirectory()) throw fail(`"${path}" is a folder. Name the ${what} inside it.`);
    if (status.size > mostBytes) throw fail(`"${path}" is too large for a ${what}. Choose the ${what}.`);
    return readFileSync(path);
  } catch (error) {
    if (error instanceof CommandFault) throw error;
    const { code, message } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT' || code === 'ENOTDIR')
      throw fail(`There is no ${what} "${path}" here. Check its name and its folder.`);
    if (code === 'EACCES' || code === 'EPERM')
      throw fail(`The ${what} "${path}" may not be read by this user. Change its permissions or copy it.`);
    throw fail(
      `The ${what} "${path}" could not be read: ${message}. Copy it to another folder and try again.`,
    );
  }
}

/**
 * Text of a file that a person wrote, without a byte order mark. Throws an unreadable-input fault where there is no
 * such file or it holds no UTF-8 text.
 */
export function readTextFile(path: string, what: string): string {
  const bytes = readSmallFile(path, what);
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    if (!text.includes('\0')) return text;
  } catch {
    // told below
  }
  throw fail(
    `"${path}" is not a text file, so it can't be a ${what}. Choose the ${what}, saved as UTF-8 text.`,
  );
}
