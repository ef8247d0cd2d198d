import { realpathSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { outputFaultSentence } from '../formats/output-fault-sentence.ts';
import { outputFault } from '../formats/write-atomically.ts';
import { CommandFault } from './command-fault.ts';

/** Files to write, by the option that names them; `-` is the screen. */
export type FileOutputs = Readonly<Partial<Record<'json' | 'csv' | 'report' | 'musicxml' | 'wav', string>>>;

/**
 * Checks before any work that every output can be written and that none lies over an input or another output.
 * Throws a usage fault.
 */
export function checkOutputPaths(
  files: FileOutputs,
  pictures: string | undefined,
  inputs: readonly string[],
): void {
  const fail = (sentence: string) => new CommandFault('usage', sentence);
  const taken = new Map(inputs.filter((path) => path !== '-').map((path) => [placeOf(path), 'is read']));
  for (const [option, path] of Object.entries(files)) {
    if (path === '') throw fail(`--${option} has an empty name behind it. Name a file.`);
    const place = path === '-' ? '-' : placeOf(path);
    const other = taken.get(place);
    if (other !== undefined) {
      const shown = path === '-' ? 'The screen' : `"${path}"`;
      throw fail(`${shown} ${other} already, so --${option} can't go there too. Choose another file.`);
    }
    taken.set(place, `is where --${option} goes`);
    const fault = path === '-' ? undefined : outputFault(path);
    if (fault !== undefined) throw fail(outputFaultSentence(path, fault));
  }
  if (pictures === undefined) return;
  if (pictures === '') throw fail('--pictures has an empty name behind it. Name a folder.');
  const status = statSync(pictures, { throwIfNoEntry: false });
  if (status !== undefined && !status.isDirectory())
    throw fail(`"${pictures}" is a file, so no pictures can stand in it. Choose a folder.`);
  // A folder that isn't there yet is made, inside one that is.
  const path = status === undefined ? pictures : join(pictures, 'picture.png');
  const fault = outputFault(path);
  if (fault !== undefined) throw fail(outputFaultSentence(path, fault));
}

/** The same for every name of a file. */
function placeOf(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return resolve(path);
  }
}
