import type { CallAnswer } from '../../library/answer-call.ts';
import { packMessage, unpackMessage } from '../../library/call-message.ts';
import { LibraryFault } from '../../library/library-fault.ts';

/** Asks the library that this page's server holds. */
export async function askServer(name: string, argument: unknown): Promise<unknown> {
  const answer = await answerOf(packMessage({ name, argument }));
  if (!answer.ok) throw new LibraryFault(answer.code, answer.facts);
  if (name !== 'exportTakes') return answer.value;
  return new Blob([answer.value as Uint8Array<ArrayBuffer>], { type: 'application/zip' });
}

async function answerOf(parts: readonly Uint8Array<ArrayBuffer>[]): Promise<CallAnswer> {
  let response: Response;
  try {
    response = await fetch('/library-call', {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream', 'evenhand-call': '1' },
      body: new Blob([...parts]),
    });
  } catch {
    throw new LibraryFault('server-gone');
  }
  if (!response.ok) throw new LibraryFault('library-failed', { reason: (await response.text()).trim() });
  return unpackMessage(new Uint8Array(await response.arrayBuffer())) as CallAnswer;
}
