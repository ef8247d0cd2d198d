import { unzipSync, zipSync } from 'fflate';
import { readTakeFile } from '../../../src/library/take-file/read-take-file.ts';
import type { TakeFileFaultCode } from '../../../src/library/take-file/take-file-fault.ts';
import { writeTakeFile } from '../../../src/library/take-file/write-take-file.ts';
import { madeParcel } from './made-parcel.ts';

export type Files = Record<string, Uint8Array>;
export const json = (value: unknown) => new TextEncoder().encode(JSON.stringify(value));
export const text = (bytes: Uint8Array | undefined) => new TextDecoder().decode(bytes);

/** A take file of one take with something changed in it, packed anew. */
export async function changed(change: (files: Files) => void): Promise<Uint8Array> {
  const files = unzipSync(await writeTakeFile([madeParcel(1)]));
  change(files);
  return zipSync(files);
}

export async function faultsOf(bytes: Uint8Array): Promise<TakeFileFaultCode[]> {
  const outcome = await readTakeFile(bytes);
  return outcome.ok ? outcome.faults.map(({ code }) => code) : [outcome.fault.code];
}

export const folder = '01-2026-03-10-accents-on-1-and-2';
