import { randomUUID } from 'node:crypto';
import {
  accessSync,
  closeSync,
  constants,
  fsyncSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { wholeBeforeSignal } from './whole-before-signal.ts';

/** Why nothing can be written to a path; `folder` is the one it would stand in. */
export type OutputFault =
  | {
      readonly code: 'folder-missing' | 'not-a-folder' | 'folder-not-writable';
      readonly facts: { readonly folder: string };
    }
  | { readonly code: 'output-is-a-folder'; readonly facts: Readonly<Record<string, never>> }
  | { readonly code: 'write-failed'; readonly facts: { readonly reason: string } };

/**
 * Says before any work whether a file can be written at this path: undefined when it can.
 *
 * @example
 * outputFault('no/such/folder/report.html'); // { code: 'folder-missing', facts: { folder: '…/no/such/folder' } }
 */
export function outputFault(path: string): OutputFault | undefined {
  const folder = dirname(resolve(path));
  try {
    const status = statSync(folder, { throwIfNoEntry: false });
    if (status === undefined) return { code: 'folder-missing', facts: { folder } };
    if (!status.isDirectory()) return { code: 'not-a-folder', facts: { folder } };
    const present = statSync(path, { throwIfNoEntry: false });
    if (present?.isDirectory()) return { code: 'output-is-a-folder', facts: {} };
    accessSync(folder, constants.W_OK | constants.X_OK);
    return undefined;
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    if (code === 'EACCES' || code === 'EROFS') return { code: 'folder-not-writable', facts: { folder } };
    return { code: 'write-failed', facts: { reason: message } };
  }
}

/** All of a file at once, or block by block. */
export type FileContents = Uint8Array | string | Iterable<Uint8Array>;

/**
 * Writes a file so that at its path stands either what was there before or the whole of the new contents: it is
 * written beside it under another name and then renamed. Nothing of it is left when that fails or Ctrl-C comes. A
 * symbolic link stays and its target is replaced; a pipe or a device is written to as it is.
 */
export function writeAtomically(path: string, contents: FileContents): OutputFault | undefined {
  return outputFault(path) ?? wholeBeforeSignal(() => writeBeside(path, contents));
}

function writeBeside(path: string, contents: FileContents): OutputFault | undefined {
  let temporary: string | undefined;
  try {
    const present = statSync(path, { throwIfNoEntry: false });
    if (present !== undefined && !present.isFile()) {
      writeInto(path, contents); // a pipe or a device must not be replaced by a file
      return undefined;
    }
    const target = present === undefined ? resolve(path) : realpathSync(path);
    temporary = join(dirname(target), `.${randomUUID()}.tmp`);
    writeWhole(temporary, contents, present?.mode);
    renameSync(temporary, target);
    return undefined;
  } catch (error) {
    if (temporary !== undefined) rmSync(temporary, { force: true });
    return { code: 'write-failed', facts: { reason: (error as Error).message } };
  }
}

function writeInto(place: string | number, contents: FileContents): void {
  if (typeof contents === 'string' || contents instanceof Uint8Array) {
    writeFileSync(place, contents);
    return;
  }
  const descriptor = typeof place === 'number' ? place : openSync(place, 'w');
  try {
    // A file's descriptor goes on where the last block ended.
    for (const block of contents) writeFileSync(descriptor, block);
  } finally {
    if (descriptor !== place) closeSync(descriptor);
  }
}

function writeWhole(path: string, contents: FileContents, mode?: number): void {
  const descriptor = openSync(path, 'wx', mode);
  try {
    writeInto(descriptor, contents);
    fsyncSync(descriptor); // the rename must not reach the disk before the contents
  } finally {
    closeSync(descriptor);
  }
}
