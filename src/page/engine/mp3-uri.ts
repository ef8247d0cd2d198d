import type { Source } from '../../core/signal/source.ts';
import { base64 } from './base64.ts';

/**
 * s of sound that go into a report: with more of it, a phone has to hold the report's text several times over. Our
 * judgement.
 */
const mostSound = 900;

/** A recording as a data URI of an MP3; null for one that is too long to go inside a page. */
export async function mp3Uri(source: Source): Promise<string | null> {
  if (source.length > mostSound * source.sampleRate) return null;
  const { mp3Of } = await import('../../formats/write-mp3.ts');
  return uriOf(await mp3Of(source));
}

/** An MP3 as a data URI. */
export const uriOf = (mp3: Uint8Array): string => `data:audio/mpeg;base64,${base64(mp3)}`;
