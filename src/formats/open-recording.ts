import { createHash } from 'node:crypto';
import { closeSync, fstatSync, openSync } from 'node:fs';
import { basename } from 'node:path';
import { isatty } from 'node:tty';
import type { Source } from '../core/signal/source.ts';
import type { Bytes } from './bytes.ts';
import { fileBytes } from './file-bytes.ts';
import type { RecordingFault, RecordingNote } from './recording-fault.ts';
import { kindBytes, recordingKind } from './recording-kind.ts';
import { riffLayout } from './riff-layout.ts';
import { spool } from './spool.ts';
import { wavSource } from './wav-source.ts';

export interface OpenRecording {
  readonly ok: true;
  readonly source: Source;
  /** The file's name without its folder. */
  readonly name: string;
  readonly notes: readonly RecordingNote[];
  /** SHA-256 of the whole file, in hexadecimal. */
  sha256(): string;
  /** After this the source can't be read any more. */
  close(): void;
}

export type RecordingOutcome =
  | OpenRecording
  | { readonly ok: false; readonly name: string; readonly fault: RecordingFault };

const standardInput = 0;
const hashBlockBytes = 1024 * 1024;

/**
 * Opens a recording by its path; `-` is standard input. A file is read as it is needed; what comes through a pipe is
 * held in memory. Never throws for what a user can get wrong; `recordingFaultSentence` puts a fault into words.
 *
 * @example
 * const recording = openRecording('take.wav');
 * if (!recording.ok) throw new Error(recordingFaultSentence(recording.name, recording.fault));
 * recording.source.read(0, 0, 1024);
 * recording.close();
 */
export function openRecording(path: string): RecordingOutcome {
  const name = path === '-' ? 'standard input' : basename(path);
  const failed = (fault: RecordingFault): RecordingOutcome => ({ ok: false, name, fault });
  if (path === '-' && isatty(standardInput)) return failed({ code: 'nothing-piped', facts: {} });

  let descriptor: number | undefined;
  const close = (): void => {
    if (descriptor !== undefined && descriptor !== standardInput) closeSync(descriptor);
    descriptor = undefined;
  };
  try {
    descriptor = path === '-' ? standardInput : openSync(path, 'r');
    const status = fstatSync(descriptor);
    const opened = status.isDirectory()
      ? failed({ code: 'is-a-folder', facts: {} })
      : readRecording(
          name,
          status.isFile() ? fileBytes(descriptor) : spool(descriptor, beginsLikeWave),
          close,
        );
    if (!opened.ok) close();
    return opened;
  } catch (error) {
    close();
    return failed(systemFault(error as NodeJS.ErrnoException));
  }
}

function readRecording(name: string, bytes: Bytes, close: () => void): RecordingOutcome {
  if (bytes.length === 0) return { ok: false, name, fault: { code: 'empty-file', facts: {} } };
  const outcome = riffLayout(bytes);
  if (!outcome.ok) return { ok: false, name, fault: outcome.fault };
  const source = wavSource(bytes, outcome.layout);
  let hash: string | undefined;
  const sha256 = (): string => {
    hash ??= hashOf(bytes);
    return hash;
  };
  return { ok: true, source, name, notes: outcome.layout.notes, sha256, close };
}

/** What isn't a wave file needn't be held in memory to its end. */
const beginsLikeWave = (head: Uint8Array): boolean => recordingKind(head.subarray(0, kindBytes)) === 'riff';

function hashOf(bytes: Bytes): string {
  const hash = createHash('sha256');
  for (let from = 0; from < bytes.length; from += hashBlockBytes) {
    hash.update(bytes.read(from, Math.min(from + hashBlockBytes, bytes.length)));
  }
  return hash.digest('hex');
}

function systemFault({ code, message }: NodeJS.ErrnoException): RecordingFault {
  if (code === 'ENOENT' || code === 'ENOTDIR') return { code: 'file-missing', facts: {} };
  if (code === 'EISDIR') return { code: 'is-a-folder', facts: {} };
  if (code === 'EACCES' || code === 'EPERM') return { code: 'not-permitted', facts: {} };
  return { code: 'read-failed', facts: { reason: message } };
}
