import type { Sha256 } from '../../report/security-policy.ts';
import { base64 } from './base64.ts';

/**
 * A page whose policy names digests of its texts. In a browser digests come later than the text asks for them, so it is
 * written with places for them, which are filled afterwards.
 */
export async function withDigests(write: (sha256: Sha256) => string): Promise<string> {
  const texts: string[] = [];
  const place = (i: number) => `digest-${i}-to-come`;
  const html = write((text) => place(texts.push(text) - 1));
  const digests = await Promise.all(texts.map(sha256));
  return digests.reduce((text, digest, i) => text.replace(place(i), digest), html);
}

async function sha256(text: string): Promise<string> {
  return base64(new Uint8Array(await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text))));
}
