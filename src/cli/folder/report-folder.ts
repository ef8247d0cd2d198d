import { mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { outputFaultSentence } from '../../formats/output-fault-sentence.ts';
import { outputFault, writeAtomically } from '../../formats/write-atomically.ts';
import { CommandFault } from '../command-fault.ts';
import type { FileToWrite } from './take-job.ts';

/** What a writer that was killed leaves; after this long nobody is writing it any more, ms. */
const leftover = /^\.[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}\.tmp$/;
const leftAfterMs = 600_000;

/** Makes the folder where it isn't there and checks that files can stand in it. Throws a usage fault. */
export function readyReportFolder(folder: string): void {
  if (folder === '')
    throw new CommandFault('usage', '--report-folder has an empty name behind it. Name a folder.');
  const path = join(folder, 'index.html');
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    const reason = (error as Error).message;
    throw new CommandFault('usage', outputFaultSentence(folder, { code: 'write-failed', facts: { reason } }));
  }
  const fault = outputFault(path);
  if (fault !== undefined) throw new CommandFault('usage', outputFaultSentence(path, fault));
}

/** Writes a file whole or not at all, making its folder. Throws a fault. */
export function writeIntoFolder({ path, contents }: FileToWrite): void {
  const folder = dirname(path);
  try {
    mkdirSync(folder, { recursive: true });
  } catch {
    // told by the writing
  }
  const fault = writeAtomically(path, contents);
  if (fault !== undefined) throw new CommandFault('fault', outputFaultSentence(path, fault));
}

/** Clears away what a program that was killed while it wrote has left in these folders. */
export function clearLeftovers(folders: Iterable<string>, nowMs: number): void {
  for (const folder of folders) {
    const status = statSync(folder, { throwIfNoEntry: false });
    if (!status?.isDirectory()) continue;
    for (const name of readdirSync(folder)) {
      const path = join(folder, name);
      if (!leftover.test(name)) continue;
      const age = nowMs - (statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? nowMs);
      if (age > leftAfterMs) rmSync(path, { force: true });
    }
  }
}
