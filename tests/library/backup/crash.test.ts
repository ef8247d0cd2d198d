import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { archiveLibrary } from '../../../src/library/backup/archive-library.ts';
import { checkLibrary } from '../../../src/library/backup/check-library.ts';
import { keepTake } from '../../../src/library/keep-take.ts';
import { madeAudio, madeTake } from '../made-take.ts';
import { everything, inFolders, opened } from './filled-library.ts';

const program = join(import.meta.dirname, 'copy-again-and-again.ts');

function killed(work: string, places: readonly string[], afterMs: number): Promise<void> {
  const child = spawn(process.execPath, ['--import', 'tsx', program, work, ...places], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  child.stdout.once('data', () => setTimeout(() => child.kill('SIGKILL'), afterMs));
  return new Promise((resolve, reject) => {
    child.on('close', (_, signal) =>
      signal === 'SIGKILL' ? resolve() : reject(new Error('it ended by itself')),
    );
  });
}

/** Two libraries that differ in every take. */
async function twoLibraries(folder: string) {
  const places = [join(folder, 'one'), join(folder, 'two')] as const;
  const contents = [];
  for (const [index, place] of places.entries())
    contents.push(
      await opened(place, async (library) => {
        for (let number = 0; number < 3; number++) {
          const audio = { name: 'a.wav', bytes: madeAudio(index * 100 + number, 400_000) };
          await keepTake(library, madeTake(index * 100 + number, { audio }));
        }
        await archiveLibrary(library, `${place}.tar`);
        return everything(library);
      }),
    );
  return { places, contents };
}

describe('a program that is killed at any moment', () => {
  it.each(['backup', 'restore', 'import'])('in a %s leaves one library or the other, whole', (work) =>
    inFolders(async (folder) => {
      const { places, contents } = await twoLibraries(folder);
      const to = join(folder, 'to');
      for (const afterMs of [20, 130].map((ms) => ms * (0.5 + Math.random()))) {
        await killed(work, [...places, to], afterMs);
        await opened(to, async (library) => {
          for await (const { code } of checkLibrary(library)) expect(code).toBe('recordings-unused');
          const there = await everything(library);
          if ((there.take as unknown[]).length > 0) expect(contents).toContainEqual(there);
        });
      }
    }),
  );
});
