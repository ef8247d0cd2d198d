import type { Static, TSchema } from 'typebox';
import Schema from 'typebox/schema';
import { parseSheet } from '../../core/exercise/parse-sheet.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { NewerTakeResult, upgradeTakeResult } from '../../core/result/upgrade-take-result.ts';
import { checkDay } from '../check-day.ts';
import { sha256Hex } from '../sha256-hex.ts';
import { TakeFileError, type TakeFileFault } from './take-file-fault.ts';
import { takeFileLimits } from './take-file-limits.ts';
import {
  type ManifestFile,
  type ManifestTake,
  remarksFileSchema,
  type TakeFileManifest,
  takeFileManifestSchema,
  takeFileVersion,
} from './take-file-manifest.ts';
import type { TakeParcel } from './take-parcel.ts';
import { unpackEntry } from './unpack-entry.ts';
import { type ZipEntry, zipEntries } from './zip-entries.ts';

export type TakeFileOutcome =
  | {
      readonly ok: true;
      readonly takes: readonly TakeParcel[];
      /** Takes of the file that can't be read, each with what is wrong; the others are whole. */
      readonly faults: readonly TakeFileFault[];
    }
  | { readonly ok: false; readonly fault: TakeFileFault };

interface Archive {
  readonly bytes: Uint8Array;
  readonly entries: ReadonlyMap<string, ZipEntry>;
}

/**
 * Reads a take file and checks everything in it: its structure, sizes and names, each file's hash, the sheet, the
 * result, the remarks. Never throws for what a file can hold; recordings are views of the given bytes. Files that the
 * manifest doesn't name are passed over.
 *
 * @example
 * const outcome = await readTakeFile(bytes);
 * if (!outcome.ok) throw new Error(takeFileFaultSentence('lesson.take.zip', outcome.fault));
 */
export async function readTakeFile(bytes: Uint8Array): Promise<TakeFileOutcome> {
  try {
    const archive = { bytes, entries: zipEntries(bytes) };
    const manifest = readManifest(archive);
    const takes: TakeParcel[] = [];
    const faults: TakeFileFault[] = [];
    for (const [index, take] of manifest.takes.entries()) {
      try {
        takes.push(await readParcel(archive, take));
      } catch (error) {
        const { code, facts } = faultOf(error);
        faults.push({ code, facts: { ...facts, take: index + 1 } });
      }
    }
    return { ok: true, takes, faults };
  } catch (error) {
    return { ok: false, fault: faultOf(error) };
  }
}

function readManifest(archive: Archive): TakeFileManifest {
  const entry = archive.entries.get('manifest.json');
  if (entry === undefined) throw new TakeFileError('no-manifest');
  const value = parseJson(
    unpackEntry(archive.bytes, entry, takeFileLimits.manifestBytes),
    'manifest-unreadable',
  );
  const { format, version } = (value ?? {}) as { format?: unknown; version?: unknown };
  if (format === 'evenhand-take-file' && typeof version === 'number' && version > takeFileVersion)
    throw new TakeFileError('manifest-newer', { version });
  const manifest = checked(takeFileManifestSchema, value, 'manifest-unreadable');
  if (manifest.takes.length > takeFileLimits.takes)
    throw new TakeFileError('too-many-files', { files: manifest.takes.length, limit: takeFileLimits.takes });
  return manifest;
}

async function readParcel(archive: Archive, take: ManifestTake): Promise<TakeParcel> {
  const { files, technique, pad, sticks, device, ...rest } = take;
  try {
    checkDay('day', take.day);
  } catch {
    throw new TakeFileError('manifest-unreadable', { reason: `"${take.day}" is no day` });
  }
  const sheetText = new TextDecoder().decode(
    await checkedFile(archive, files.sheet, takeFileLimits.sheetBytes),
  );
  checkSheet(sheetText);
  const result = readResultFile(await checkedFile(archive, files.result, takeFileLimits.resultBytes));
  const remarks = checked(
    remarksFileSchema,
    parseJson(await checkedFile(archive, files.remarks, takeFileLimits.remarksBytes), 'remarks-unreadable'),
    'remarks-unreadable',
  );
  const { audio } = files;
  const recording =
    audio === null
      ? null
      : { name: audio.name, bytes: await checkedFile(archive, audio, takeFileLimits.audioBytes) };
  const claimed = result.recording.sha256;
  if (audio !== null && claimed !== null && claimed !== audio.sha256)
    throw new TakeFileError('hash-wrong', { name: audio.path });
  const details = { technique, pad, sticks, device };
  return { ...rest, details, audio: recording, sheetText, result, remarks };
}

async function checkedFile(archive: Archive, file: ManifestFile, limit: number): Promise<Uint8Array> {
  const { path: name, bytes: size, sha256 } = file;
  const entry = archive.entries.get(name);
  if (entry === undefined) throw new TakeFileError('file-missing', { name });
  const bytes = unpackEntry(archive.bytes, entry, limit);
  if (bytes.length !== size || (await sha256Hex(bytes)) !== sha256)
    throw new TakeFileError('hash-wrong', { name });
  return bytes;
}

function checkSheet(text: string): void {
  const parsed = parseSheet(text);
  if (!parsed.ok) throw new TakeFileError('sheet-unreadable', { reason: parsed.faults[0]?.code ?? 'empty' });
}

function readResultFile(bytes: Uint8Array): TakeResult {
  const value = parseJson(bytes, 'result-unreadable');
  try {
    return upgradeTakeResult(value);
  } catch (error) {
    if (error instanceof NewerTakeResult) throw new TakeFileError('result-newer', { version: error.version });
    throw new TakeFileError('result-unreadable', { reason: (error as Error).message });
  }
}

type UnreadableCode = 'manifest-unreadable' | 'result-unreadable' | 'remarks-unreadable';

function parseJson(bytes: Uint8Array, code: UnreadableCode): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch (error) {
    throw new TakeFileError(code, { reason: (error as Error).message });
  }
}

function checked<T extends TSchema>(schema: T, value: unknown, code: UnreadableCode): Static<T> {
  const [valid, errors] = Schema.Errors(schema, value);
  if (!valid) {
    const first = errors[0];
    const reason = `${first?.instancePath || 'document'} ${first?.message ?? ''}`.trim();
    throw new TakeFileError(code, { reason });
  }
  return value as Static<T>;
}

function faultOf(error: unknown): TakeFileFault {
  if (error instanceof TakeFileError) return error.fault;
  throw error;
}
