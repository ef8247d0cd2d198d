import type { Source } from '../../core/signal/source.ts';

/**
 * A few milliseconds of the recording itself, by which a player finds out how much later its decoded sound begins: how
 * much of an MP3's start decoders leave out differs from one to the next.
 */
export interface SoundPrint {
  /** s of the recording at which it begins. */
  readonly at: number;
  readonly sampleRate: number;
  /** −127 … 127 at the print's own peak. */
  readonly samples: readonly number[];
}

const seconds = 0.02;
const before = 0.004;

/**
 * The print of a recording round its loudest stroke; null without strokes. `time` s, `levelDb` dB. Rate: the
 * recording's; channels mixed to one.
 */
export function soundPrint(
  source: Source,
  { time, levelDb }: { readonly time: readonly number[]; readonly levelDb: readonly number[] },
): SoundPrint | null {
  if (time.length === 0) return null;
  const loudest = levelDb.reduce((best, level, i) => (level > levelDb[best]! ? i : best), 0);
  const { sampleRate, channels } = source;
  const from = Math.max(0, Math.round((time[loudest]! - before) * sampleRate));
  const count = Math.round(seconds * sampleRate);
  const mix = new Float32Array(count);
  for (let channel = 0; channel < channels; channel++) {
    source.read(channel, from, from + count).forEach((sample, i) => {
      mix[i]! += sample;
    });
  }
  const peak = mix.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  if (peak === 0) return null;
  return { at: from / sampleRate, sampleRate, samples: Array.from(mix, (s) => Math.round((127 * s) / peak)) };
}
