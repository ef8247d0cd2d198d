import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { runProgram, sampleSheetPath, sampleTakePath } from './built-program.ts';

/** A library of its own, and the program run on it. */
export function builtLibrary() {
  const folder = join(temporaryFolder(), 'library');
  const run = (...args: string[]) => runProgram([...args, '--library', folder]);
  const keep = (name: string, player: string, ...rest: string[]) =>
    run('grade', sampleTakePath(name), '--sheet', sampleSheetPath(name), '--player', player, ...rest);
  const recordings = () =>
    readdirSync(join(folder, 'audio'), { recursive: true, encoding: 'utf8' }).filter((name) =>
      /[0-9a-f]{64}$/.test(name),
    );
  return { folder, run, keep, recordings };
}
