import type { RecordingGap } from '../../../core/grading/recording-gaps.ts';
import { decodeHead, decodeTake, type TakeHead, type TakeNote } from './chunk-file.ts';
import { lockOf, unfinishedFolder } from './writer-messages.ts';

/** A recording that was written while it came and never finished with. */
export interface UnfinishedTake extends TakeHead {
  /** About how long it is, s. */
  readonly seconds: number;
  load(): Promise<RecoveredSound>;
  /** Deletes it for real. */
  remove(): Promise<void>;
}

export interface RecoveredSound {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
  readonly gaps: readonly RecordingGap[];
  readonly notes: readonly TakeNote[];
}

/** Anything shorter was stopped before it began, s. */
const shortest = 0.5;
const headBytes = 1 << 18;

type IterableFolder = FileSystemDirectoryHandle & { values(): AsyncIterable<FileSystemHandle> };

/**
 * Recordings that a closed or killed tab left behind, the newest first. What another tab is recording isn't among them;
 * what is too short to be anything is deleted. Never rejects: a browser without private files has none.
 */
export async function recoverTakes(): Promise<readonly UnfinishedTake[]> {
  try {
    const root = await navigator.storage.getDirectory();
    const folder = (await root.getDirectoryHandle(unfinishedFolder, { create: true })) as IterableFolder;
    const held = new Set((await navigator.locks?.query())?.held?.map(({ name }) => name));
    const found: UnfinishedTake[] = [];
    for await (const entry of folder.values()) {
      if (entry.kind !== 'file' || held.has(lockOf(entry.name))) continue;
      const take = await unfinished(entry as FileSystemFileHandle, folder);
      if (take !== null) found.push(take);
    }
    return found.sort((a, b) => b.startedAt.localeCompare(a.startedAt));
  } catch {
    return [];
  }
}

async function unfinished(
  handle: FileSystemFileHandle,
  folder: FileSystemDirectoryHandle,
): Promise<UnfinishedTake | null> {
  const file = await handle.getFile();
  const begun = decodeHead(new Uint8Array(await file.slice(0, headBytes).arrayBuffer()));
  const remove = () => folder.removeEntry(handle.name);
  const seconds = begun === null ? 0 : (file.size - begun.end) / 4 / begun.head.sampleRate;
  if (begun === null || seconds < shortest) {
    await remove().catch(() => undefined);
    return null;
  }
  return {
    ...begun.head,
    seconds,
    remove,
    async load() {
      const take = decodeTake(new Uint8Array(await (await handle.getFile()).arrayBuffer()));
      if (take === null) throw new Error('The recording could not be read back.');
      const { samples, gaps, notes, head } = take;
      return { samples, gaps, notes, sampleRate: head.sampleRate };
    },
  };
}
