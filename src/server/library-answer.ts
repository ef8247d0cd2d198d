import type { IncomingMessage } from 'node:http';
import { ownAddress } from './page-answer.ts';

/** Where the page asks for what a library can do. */
export const callAddress = '/library-call';

/** A recording and a graded take around it; a longer message isn't read. */
const mostMessageBytes = 576 * 1024 * 1024;

/** Answers one call; the bytes are a message of `call-message.ts`. */
export type AnswerCall = (message: Uint8Array) => Promise<readonly Uint8Array[]>;

/** Why a call is refused before it is read. */
type Refusal = readonly [status: number, sentence: string];

/**
 * Whether a request may ask the library. It must name this server as its host, so that no name that somebody points
 * at this machine reaches it; come from this server's own page, as its browser says (`Origin`, Fetch Metadata); and
 * carry a header of its own, which no other page's form or plain request can. Reading needs all that too: takes are
 * private.
 */
export function callRefusal(
  { method, headers }: Pick<IncomingMessage, 'method' | 'headers'>,
  port: number,
  most = mostMessageBytes,
): Refusal | null {
  const own = `${ownAddress}:${port}`;
  if (headers.host !== own) return [421, 'This address belongs to another server.'];
  const site = headers['sec-fetch-site'];
  if (headers.origin !== `http://${own}` || (site !== undefined && site !== 'same-origin'))
    return [403, 'Only the page of this server may ask for takes.'];
  if (method !== 'POST') return [405, 'Takes are asked for by POST.'];
  if (headers['content-type'] !== 'application/octet-stream' || headers['evenhand-call'] !== '1')
    return [415, 'This is no call of the page.'];
  const length = Number(headers['content-length']);
  if (!Number.isSafeInteger(length)) return [411, 'The length of the message is wanted.'];
  if (length > most) return [413, 'This is too large for the library: 576 MB at most.'];
  return null;
}

/** A request's body; it ends where `Content-Length` says. */
export async function bodyOf(request: IncomingMessage): Promise<Uint8Array> {
  const bytes = new Uint8Array(Number(request.headers['content-length']));
  let at = 0;
  for await (const part of request as AsyncIterable<Uint8Array>) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes.subarray(0, at);
}
