import type { TakeResult } from './take-result.ts';
import { takeResultVersion } from './take-result-version.ts';
import { InvalidTakeResult, validateTakeResult } from './validate-take-result.ts';

type Document = Readonly<Record<string, unknown>>;

/** Step `n` makes a document of version n + 2 from one of version n + 1. */
const steps: readonly ((old: Document) => Document)[] = [];

/** A result of a program newer than this one. */
export class NewerTakeResult extends Error {
  constructor(readonly version: number) {
    super(`take result of version ${version}; this program reads up to ${takeResultVersion}`);
    this.name = 'NewerTakeResult';
  }
}

/**
 * Reads a take result of this or any earlier version as one of this version. Throws `NewerTakeResult` for a later one
 * and `InvalidTakeResult` for what is none.
 *
 * @example upgradeTakeResult(JSON.parse(text)).version // 1
 */
export function upgradeTakeResult(value: unknown, upgrades = steps): TakeResult {
  if (typeof value !== 'object' || value === null) return validateTakeResult(value);
  let document = value as Document;
  const { schema, version } = document;
  if (schema !== 'evenhand-take-result' || typeof version !== 'number' || !Number.isInteger(version)) {
    return validateTakeResult(value);
  }
  if (version > upgrades.length + 1) throw new NewerTakeResult(version);
  if (version < 1) throw new InvalidTakeResult('/version', 'is below 1');
  for (const step of upgrades.slice(version - 1)) document = step(document);
  return validateTakeResult(document);
}
