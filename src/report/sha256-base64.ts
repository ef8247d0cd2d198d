import { createHash } from 'node:crypto';
import type { Sha256 } from './security-policy.ts';

/** Digests as policies name them, worked out by Node. */
export const sha256Base64: Sha256 = (text) => createHash('sha256').update(text, 'utf8').digest('base64');
