import type { Library } from './library.ts';
import { openTakeFile } from './take-file/read-take-file.ts';
import type { TakeFileFault } from './take-file/take-file-fault.ts';
import { takeFileChunks } from './take-file/write-take-file.ts';
import { type ReceivedTake, receiveTake, takeParcel } from './take-parcels.ts';

/** Takes as one take file; each is read when its turn comes. Throws `LibraryFault` for one that isn't there. */
export async function exportTakes(library: Library, ids: readonly string[]): Promise<Blob> {
  const parcels = async function* () {
    for (const id of ids) yield await takeParcel(library, id);
  };
  // A blob may lie on the disk, so what is written already needn't stay in memory.
  let written = new Blob([], { type: 'application/zip' });
  for await (const chunk of takeFileChunks(parcels())) {
    written = new Blob([written, chunk as Uint8Array<ArrayBuffer>], { type: written.type });
  }
  return written;
}

type ImportOutcome =
  | {
      readonly ok: true;
      readonly takes: readonly ReceivedTake[];
      /** Takes that couldn't be read; the others are kept. */
      readonly faults: readonly TakeFileFault[];
    }
  | { readonly ok: false; readonly fault: TakeFileFault };

/** Keeps the takes of a take file, each whole or not at all; those that are there already stay as they are. */
export async function importTakeFile(
  library: Library,
  { bytes, keptAt }: { readonly bytes: Uint8Array; readonly keptAt: number },
): Promise<ImportOutcome> {
  const file = openTakeFile(bytes);
  if (!file.ok) return file;
  const takes: ReceivedTake[] = [];
  const faults: TakeFileFault[] = [];
  for await (const parcel of file.parcels()) {
    if (parcel.ok) takes.push(await receiveTake(library, parcel.take, keptAt));
    else faults.push(parcel.fault);
  }
  return { ok: true, takes, faults };
}
