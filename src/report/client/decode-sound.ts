import { findDelay, usualDelay } from '../listening/find-delay.ts';
import type { Sound } from '../listening/mix-pieces.ts';
import type { SoundPrint } from '../listening/sound-print.ts';

/**
 * The sound in a data URI, decoded at its own rate and put in step with the recording it was made of. Rejects where the
 * browser can't decode it.
 */
export async function decodeSound(uri: string, sampleRate: number, print: SoundPrint | null): Promise<Sound> {
  const text = atob(uri.slice(uri.indexOf(',') + 1));
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i);
  const decoded = await new OfflineAudioContext(1, 1, sampleRate).decodeAudioData(bytes.buffer);
  const samples = decoded.getChannelData(0);
  const delay = print === null ? usualDelay : findDelay({ samples, sampleRate }, print);
  if (delay >= 0) return { samples: samples.subarray(delay), sampleRate };
  const later = new Float32Array(samples.length - delay);
  later.set(samples, -delay);
  return { samples: later, sampleRate };
}
