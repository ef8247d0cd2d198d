import { parseSheet } from '../../core/exercise/parse-sheet.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { NewerTakeResult, upgradeTakeResult } from '../../core/result/upgrade-take-result.ts';
import { checkDay } from '../check-day.ts';
import { sha256Hex } from '../sha256-hex.ts';
import { checked, readJson } from './checked-json.ts';
import { readManifest } from './read-manifest.ts';
import { TakeFileError, type TakeFileFault } from './take-file-fault.ts';
import { takeFileLimits } from './take-file-limits.ts';
import { type ManifestFile, type ManifestTake, remarksFileSchema } from './take-file-manifest.ts';
import type { TakeParcel } from './take-parcel.ts';
import { unpackEntry } from './unpack-entry.ts';
import { type ZipEntry, zipEntries } from './zip-entries.ts';

type TakeFileOutcome =
  | {
      readonly ok: true;
      readonly takes: readonly TakeParcel[];
      /** Takes of the file that can't be read, each with what is wrong; the others are whole. */
      readonly faults: readonly TakeFileFault[];
    }
  | { readonly ok: false; readonly fault: TakeFileFault };

type ReadParcel =
  | { readonly ok: true; readonly take: TakeParcel }
  | { readonly ok: false; readonly fault: TakeFileFault };

/** A take file whose list of takes is sound. */
interface OpenTakeFile {
  readonly ok: true;
  readonly count: number;
  /** Its takes, each read and checked when it is asked for. */
  parcels(): AsyncGenerator<ReadParcel, void>;
}

interface Archive {
  readonly bytes: Uint8Array;
  readonly entries: ReadonlyMap<string, ZipEntry>;
  /** Recordings that were checked already, by path: takes may share one. */
  readonly audio: Map<string, Uint8Array>;
}

/**
 * Opens a take file and checks its structure and its list of takes. Never throws for what a file can hold; recordings
 * are views of the given bytes. Files that the list doesn't name are passed over.
 */
export function openTakeFile(bytes: Uint8Array): OpenTakeFile | Extract<TakeFileOutcome, { ok: false }> {
  try {
    const archive = { bytes, entries: zipEntries(bytes), audio: new Map() };
    const { takes } = readManifest(bytes, archive.entries);
    return {
      ok: true,
      count: takes.length,
      async *parcels() {
        for (const [index, take] of takes.entries()) {
          try {
            yield { ok: true, take: await readParcel(archive, take) };
          } catch (error) {
            const { code, facts } = faultOf(error);
            yield { ok: false, fault: { code, facts: { ...facts, take: index + 1 } } };
          }
        }
      },
    };
  } catch (error) {
    return { ok: false, fault: faultOf(error) };
  }
}

/**
 * Reads a take file as a whole and checks everything in it: its structure, sizes and names, each file's hash, the
 * sheet, the result, the remarks.
 *
 * @example
 * const outcome = await readTakeFile(bytes);
 * if (!outcome.ok) throw new Error(takeFileFaultSentence('lesson.take.zip', outcome.fault));
 */
export async function readTakeFile(bytes: Uint8Array): Promise<TakeFileOutcome> {
  const file = openTakeFile(bytes);
  if (!file.ok) return file;
  const takes: TakeParcel[] = [];
  const faults: TakeFileFault[] = [];
  for await (const parcel of file.parcels()) {
    if (parcel.ok) takes.push(parcel.take);
    else faults.push(parcel.fault);
  }
  return { ok: true, takes, faults };
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
    readJson(await checkedFile(archive, files.remarks, takeFileLimits.remarksBytes), 'remarks-unreadable'),
    'remarks-unreadable',
  );
  const { audio } = files;
  const recording = audio === null ? null : { name: audio.name, bytes: await checkedAudio(archive, audio) };
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

async function checkedAudio(archive: Archive, file: ManifestFile): Promise<Uint8Array> {
  const known = archive.audio.get(`${file.path} ${file.sha256}`);
  if (known !== undefined && known.length === file.bytes) return known;
  const bytes = await checkedFile(archive, file, takeFileLimits.audioBytes);
  archive.audio.set(`${file.path} ${file.sha256}`, bytes);
  return bytes;
}

function checkSheet(text: string): void {
  const parsed = parseSheet(text);
  if (!parsed.ok) throw new TakeFileError('sheet-unreadable', { reason: parsed.faults[0]?.code ?? 'empty' });
}

function readResultFile(bytes: Uint8Array): TakeResult {
  const value = readJson(bytes, 'result-unreadable');
  try {
    return upgradeTakeResult(value);
  } catch (error) {
    if (error instanceof NewerTakeResult) throw new TakeFileError('result-newer', { version: error.version });
    throw new TakeFileError('result-unreadable', { reason: (error as Error).message });
  }
}

function faultOf(error: unknown): TakeFileFault {
  if (error instanceof TakeFileError) return error.fault;
  throw error;
}
