import { askedAddress } from './asked-address.ts';
import type { PageFiles } from './page-files.ts';

export const ownAddress = '127.0.0.1';

/** What of a request decides its answer. */
interface Asked {
  readonly method: string;
  /** As it stands in the request's first line. */
  readonly target: string;
  readonly host: string | undefined;
  readonly origin: string | undefined;
}

interface PageAnswer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Uint8Array;
}

/** What every answer says. The policy for scripts stands in the page itself; framing can only be forbidden here. */
export const sameForAll = {
  'content-security-policy': "frame-ancestors 'none'",
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'microphone=(self), camera=(), geolocation=(), payment=(), usb=()',
};

/**
 * The answer of a server that listens on `port` of this machine. A request must name it as its host, so that no name
 * that somebody points at this machine reaches it, and come from no other page; only known files are given, by GET
 * and HEAD.
 */
export function pageAnswer(
  { method, target, host, origin }: Asked,
  port: number,
  files: PageFiles,
): PageAnswer {
  const own = `${ownAddress}:${port}`;
  const alias = `localhost:${port}`;
  if (host !== own && host !== alias) return refusal(421, 'This address belongs to another server.');
  if (origin !== undefined && origin !== `http://${host}`)
    return refusal(403, 'Another page may not ask for this.');
  if (method !== 'GET' && method !== 'HEAD')
    return refusal(405, 'Only reading is possible here.', { allow: 'GET, HEAD' });
  const address = askedAddress(target);
  if (address === null) return refusal(400, 'This address cannot be read.');
  const file = files.get(address);
  if (file === undefined) return refusal(404, 'There is nothing here.');
  // The browser keeps takes by address: two names for one server would be two libraries.
  if (host === alias) return refusal(308, 'Moved.', { location: `http://${own}${encodeURI(address)}` });
  const headers = {
    ...sameForAll,
    'content-type': file.type,
    'content-length': `${file.contents.length}`,
    'cache-control': file.unchanging ? 'public, max-age=31536000, immutable' : 'no-cache',
  };
  return { status: 200, headers, body: file.contents };
}

/** A refusal in a sentence. */
export function refusal(
  status: number,
  sentence: string,
  more: Readonly<Record<string, string>> = {},
): PageAnswer {
  const body = new TextEncoder().encode(`${sentence}\n`);
  const plain = { 'content-type': 'text/plain; charset=utf-8', 'content-length': `${body.length}` };
  return { status, headers: { ...sameForAll, ...plain, ...more }, body };
}
