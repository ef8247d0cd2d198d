import { deflateSync, inflateSync } from 'fflate';
import type { TakeResult } from '../core/result/take-result.ts';
import { takeResultVersion } from '../core/result/take-result-version.ts';
import { NewerTakeResult, upgradeTakeResult } from '../core/result/upgrade-take-result.ts';
import { InvalidTakeResult } from '../core/result/validate-take-result.ts';
import { LibraryFault } from './library-fault.ts';

/** A result as the library keeps it: JSON, deflated (RFC 1951), about a fifth of its length. */
export function packResult(result: TakeResult): Uint8Array {
  return deflateSync(new TextEncoder().encode(JSON.stringify(result)));
}

/** A kept result in this program's version; throws `LibraryFault` for one that is newer or damaged. */
export function unpackResult(json: Uint8Array): TakeResult {
  return readResult(unpackedJson(json));
}

/**
 * A kept result for the many that one view reads: one of this program's version isn't held against the schema again, which
 * takes longer than all the rest; it was before it was kept. Throws as `unpackResult` does.
 */
export function keptResult(json: Uint8Array): TakeResult {
  const document = unpackedJson(json) as Partial<TakeResult> | null;
  return document?.version === takeResultVersion ? (document as TakeResult) : readResult(document);
}

/** The JSON document that was packed, of whatever version; throws `LibraryFault` for damaged bytes. */
export function unpackedJson(json: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder().decode(inflateSync(json)));
  } catch (error) {
    throw new LibraryFault('result-unreadable', { reason: (error as Error).message });
  }
}

/** An unknown value as a result of this program's version; throws `LibraryFault` where it is none. */
export function readResult(value: unknown): TakeResult {
  try {
    return upgradeTakeResult(value);
  } catch (error) {
    if (error instanceof NewerTakeResult)
      throw new LibraryFault('result-is-newer', { version: error.version, known: takeResultVersion });
    if (error instanceof InvalidTakeResult)
      throw new LibraryFault('result-unreadable', {
        reason: `${error.path || 'the document'} ${error.fault}`,
      });
    throw error;
  }
}
