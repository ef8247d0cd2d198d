import { createHash } from 'node:crypto';
import { closeSync, fstatSync, openSync } from 'node:fs';
import { basename } from 'node:path';
import { isatty } from 'node:tty';
import { aacByPackage } from './aac-by-package.ts';
import { alacByPackage } from './alac-by-package.ts';
import type { Bytes } from './bytes.ts';
import type { DecodingMeans } from './coded/open-coded.ts';
import { fileBytes } from './file-bytes.ts';
import { type OpenSound, openSound } from './open-sound.ts';
import type { RecordingFault } from './recording-fault.ts';
import { isReadable, kindBytes, recordingKind } from './recording-kind.ts';
import { scratchFile } from './scratch-file.ts';
import { mostSpooled, spool, TooMuchPiped } from './spool.ts';

export interface OpenRecording extends OpenSound {
  /** The file's name without its folder. */
  readonly name: string;
  /** SHA-256 of the whole file, in hexadecimal. */
  sha256(): string;
}

type RecordingOutcome =
  | OpenRecording
  | { readonly ok: false; readonly name: string; readonly fault: RecordingFault };

const standardInput = 0;
const hashBlockBytes = 1024 * 1024;

/**
 * Opens a recording by its path; `-` is standard input. A wave file is read as it is needed; what comes through a pipe
 * is held in memory. `told` hears how far decoding has come. Never rejects for what a user can get wrong;
 * `recordingFaultSentence` puts a fault into words.
 *
 * @example
 * const recording = await openRecording('take.wav');
 * if (!recording.ok) throw new Error(recordingFaultSentence(recording.name, recording.fault));
 * recording.source.read(0, 0, 1024);
 * recording.close();
 */
export async function openRecording(
  path: string,
  { told }: Pick<DecodingMeans, 'told'> = {},
): Promise<RecordingOutcome> {
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
      : await readRecording(
          name,
          status.isFile() ? fileBytes(descriptor) : spool(descriptor, beginsLikeSound),
          close,
          told,
        );
    if (!opened.ok) close();
    return opened;
  } catch (error) {
    close();
    if (error instanceof TooMuchPiped)
      return failed({ code: 'too-much-piped', facts: { mebibytes: mostSpooled / 2 ** 20 } });
    return failed(systemFault(error as NodeJS.ErrnoException));
  }
}

async function readRecording(
  name: string,
  bytes: Bytes,
  closeFile: () => void,
  told: DecodingMeans['told'],
): Promise<RecordingOutcome> {
  const opened = await openSound(bytes, {
    makeScratch: scratchFile,
    aac: aacByPackage,
    alac: alacByPackage,
    ...(told ? { told } : {}),
  });
  if (!opened.ok) return { ...opened, name };
  let hash: string | undefined;
  const sha256 = (): string => {
    hash ??= hashOf(bytes);
    return hash;
  };
  let open = true;
  const close = (): void => {
    if (open) opened.close();
    open = false;
    closeFile();
  };
  return { ...opened, name, sha256, close };
}

/** What isn't a recording needn't be held in memory to its end. */
function beginsLikeSound(head: Uint8Array): boolean {
  return isReadable(recordingKind(head.subarray(0, kindBytes)));
}

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
