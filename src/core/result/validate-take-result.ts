import Schema from 'typebox/schema';
import { innerFault } from './inner-fault.ts';
import { type TakeResult, takeResultSchema } from './take-result.ts';

/** A document that is no take result, with the place of the first fault in it. */
export class InvalidTakeResult extends Error {
  constructor(
    readonly path: string,
    readonly fault: string,
  ) {
    super(`not a take result: ${path || 'document'} ${fault}`);
    this.name = 'InvalidTakeResult';
  }
}

/**
 * Checks an unknown value against the schema, and its parts against each other, and returns it typed; throws
 * `InvalidTakeResult` otherwise.
 */
export function validateTakeResult(value: unknown): TakeResult {
  const [valid, errors] = Schema.Errors(takeResultSchema, value);
  if (!valid) {
    const first = errors[0];
    throw new InvalidTakeResult(first?.instancePath ?? '', first?.message ?? 'does not fit the schema');
  }
  const inner = innerFault(value as TakeResult);
  if (inner !== null) throw new InvalidTakeResult(inner.path, inner.fault);
  return value as TakeResult;
}
