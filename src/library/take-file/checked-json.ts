import type { Static, TSchema } from 'typebox';
import Schema from 'typebox/schema';
import { parseJson } from '../../core/result/parse-json.ts';
import { TakeFileError } from './take-file-fault.ts';

type UnreadableCode = 'manifest-unreadable' | 'result-unreadable' | 'remarks-unreadable';

/** A file's contents as JSON (UTF-8); throws `TakeFileError` for anything else. */
export function readJson(bytes: Uint8Array, code: UnreadableCode): unknown {
  try {
    return parseJson(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch (error) {
    throw new TakeFileError(code, { reason: (error as Error).message });
  }
}

/** A value that fits a schema, typed; throws `TakeFileError` with the first place that doesn't fit. */
export function checked<T extends TSchema>(schema: T, value: unknown, code: UnreadableCode): Static<T> {
  const [valid, errors] = Schema.Errors(schema, value);
  if (!valid) {
    const first = errors[0];
    const reason = `${first?.instancePath || 'document'} ${first?.message ?? ''}`.trim();
    throw new TakeFileError(code, { reason });
  }
  return value as Static<T>;
}
