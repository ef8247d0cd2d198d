import { type SpawnSyncReturns, spawnSync } from 'node:child_process';
import { join, resolve } from 'node:path';

export const repository = resolve(import.meta.dirname, '../..');
const program = join(repository, 'dist/main.js');
export const sampleFolder = join(repository, 'fixtures/takes');

export type Ending = Pick<SpawnSyncReturns<string>, 'status' | 'stdout' | 'stderr'>;

/** Runs the built program in a folder, without a terminal. */
export function runProgram(
  args: readonly string[],
  { folder = repository, input }: { readonly folder?: string; readonly input?: Uint8Array } = {},
): Ending {
  const { status, stdout, stderr, error } = spawnSync(process.execPath, [program, ...args], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1' },
    maxBuffer: 64 * 1024 * 1024,
    ...(input === undefined ? {} : { input }),
  });
  if (error) throw error;
  return { status, stdout, stderr };
}

/** A sample take's recording. */
export const sampleTakePath = (name: string) => join(sampleFolder, `${name}.wav`);
export const sampleSheetPath = (name: string) => join(sampleFolder, `${name}.sheet`);
