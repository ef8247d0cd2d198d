import type { TakeSound } from './engine-messages.ts';

/** Hz to which a browser brings what it decodes. */
const sampleRate = 48_000;

/** Samples of a compressed recording, decoded by the browser itself; null where it can't. */
export async function decodeByBrowser(bytes: Uint8Array): Promise<TakeSound | null> {
  try {
    const context = new OfflineAudioContext(1, 1, sampleRate);
    const decoded = await context.decodeAudioData(Uint8Array.from(bytes).buffer);
    const samples = Array.from({ length: decoded.numberOfChannels }, (_, i) => decoded.getChannelData(i));
    return { samples, sampleRate };
  } catch {
    return null;
  }
}
