import type { Sound } from './mix-pieces.ts';
import type { SoundPrint } from './sound-print.ts';

/** Delay of an MP3 whose player takes nothing off, samples: 576 of the encoder and 529 of the decoder. */
export const usualDelay = 1105;

/** Longest delay looked for, either way, samples. */
const mostDelay = 4000;
/** Correlation that a sound must reach to be taken for the one that was printed. */
const leastLikeness = 0.5;

/**
 * Samples by which a decoded sound lags behind the recording that a print was taken of: where the correlation
 * coefficient of the two is greatest. `usualDelay` where none is at least a half, as with another sound.
 */
export function findDelay({ samples, sampleRate }: Sound, print: SoundPrint): number {
  const wanted = resampled(print, sampleRate);
  const start = Math.round(print.at * sampleRate);
  const own = Math.sqrt(wanted.reduce((sum, sample) => sum + sample * sample, 0));
  let best = { delay: usualDelay, likeness: leastLikeness };
  for (let delay = -mostDelay; delay <= mostDelay; delay++) {
    if (start + delay < 0 || start + delay + wanted.length > samples.length) continue;
    let product = 0;
    let power = 0;
    for (let i = 0; i < wanted.length; i++) {
      const sample = samples[start + delay + i]!;
      product += sample * wanted[i]!;
      power += sample * sample;
    }
    const likeness = power === 0 ? 0 : product / (own * Math.sqrt(power));
    if (likeness > best.likeness) best = { delay, likeness };
  }
  return best.delay;
}

/** The print at another rate, by straight lines between its samples. */
function resampled({ samples, sampleRate, at }: SoundPrint, rate: number): Float64Array {
  const count = Math.floor(((samples.length - 2) / sampleRate) * rate);
  const begin = Math.round(at * rate) / rate - at;
  return Float64Array.from({ length: count }, (_, i) => {
    const place = Math.max(0, (begin + i / rate) * sampleRate);
    const left = Math.floor(place);
    return samples[left]! + (place - left) * ((samples[left + 1] ?? samples[left]!) - samples[left]!);
  });
}
