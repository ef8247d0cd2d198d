import Schema from 'typebox/schema';
import { type SessionResult, sessionResultSchema } from './session-result.ts';

/** A document that is no session result, with the place of the first fault in it. */
export class InvalidSessionResult extends Error {
  constructor(
    readonly path: string,
    readonly fault: string,
  ) {
    super(`not a session result: ${path || 'document'} ${fault}`);
    this.name = 'InvalidSessionResult';
  }
}

/** Checks an unknown value against the schema and returns it typed; throws `InvalidSessionResult` otherwise. */
export function validateSessionResult(value: unknown): SessionResult {
  const [valid, errors] = Schema.Errors(sessionResultSchema, value);
  if (!valid) {
    const first = errors[0];
    throw new InvalidSessionResult(first?.instancePath ?? '', first?.message ?? 'does not fit the schema');
  }
  return value as SessionResult;
}
