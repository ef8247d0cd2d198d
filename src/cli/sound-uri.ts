import type { Source } from '../core/signal/source.ts';
import { writeWav } from '../formats/write-wav.ts';

/** A longer recording makes a report that browsers open slowly, s. Our judgement. */
export const longestSound = 900;

/**
 * A recording's sound as a data URI that a browser plays: WAV, 16 bit, its channels mixed to one. Null for one that is
 * longer than `longestSound`.
 *
 * @example soundUri(source) // 'data:audio/wav;base64,UklGR…'
 */
export function soundUri(source: Source): string | null {
  const { sampleRate, channels, length } = source;
  if (length > longestSound * sampleRate) return null;
  const mixed = new Float32Array(length);
  for (let channel = 0; channel < channels; channel++) {
    source.read(channel, 0, length).forEach((sample, i) => {
      mixed[i]! += sample / channels;
    });
  }
  const bytes = writeWav({ channels: [mixed], sampleRate, depth: 'int16' });
  return `data:audio/wav;base64,${Buffer.from(bytes).toString('base64')}`;
}
