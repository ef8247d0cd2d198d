import { packMessage, unpackMessage } from './call-message.ts';
import type { Library } from './library.ts';
import { type LibraryCallName, libraryCalls } from './library-calls.ts';
import { faultOfCall, type LibraryFault } from './library-fault.ts';

/** What became of a call: what it gave, or a `LibraryFault`'s code and facts. */
export type CallAnswer =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly code: LibraryFault['code']; readonly facts: LibraryFault['facts'] };

/**
 * Does what a message asks of a library, `{ name, argument }`, and gives the answer as the parts of a message. Never
 * throws: whatever goes wrong is an answer.
 */
export async function answerCall(
  library: Library,
  message: Uint8Array,
): Promise<readonly Uint8Array<ArrayBuffer>[]> {
  try {
    const { name, argument } = unpackMessage(message) as { name: string; argument: unknown };
    if (!Object.hasOwn(libraryCalls, name))
      throw new Error(`there is no call "${String(name).slice(0, 40)}"`);
    const call = libraryCalls[name as LibraryCallName] as (
      library: Library,
      argument: unknown,
    ) => Promise<unknown>;
    const value = await call(library, argument);
    const bytes = value instanceof Blob ? new Uint8Array(await value.arrayBuffer()) : value;
    return packMessage({ ok: true, value: bytes } satisfies CallAnswer);
  } catch (error) {
    const { code, facts } = faultOfCall(error);
    return packMessage({ ok: false, code, facts } satisfies CallAnswer);
  }
}
