import type { Arrangement } from './piece.ts';

/** A click: a short tone that dies away, the strong one higher. Our own choice. */
const tone = { strongHz: 1320, weakHz: 880, decay: 0.012, length: 0.06, level: 0.25 };

/** The clicks of an arrangement in `count` samples from sample `first` on. */
export function mixClicks(
  { clicks, length, goesRound }: Arrangement,
  sampleRate: number,
  first: number,
  count: number,
): Float32Array {
  const out = new Float32Array(count);
  const period = Math.max(1, Math.round(length * sampleRate));
  const lastRound = goesRound ? Math.floor((first + count) / period) : 0;
  const firstRound = goesRound ? Math.max(0, Math.floor(first / period) - 1) : 0;
  const samples = Math.round(tone.length * sampleRate);
  for (let round = firstRound; round <= lastRound; round++) {
    for (const { at, strong } of clicks) {
      const begin = round * period + Math.round(at * sampleRate) - first;
      for (let i = Math.max(0, -begin); i < samples && begin + i < count; i++) {
        const time = i / sampleRate;
        const hertz = strong ? tone.strongHz : tone.weakHz;
        out[begin + i]! += tone.level * Math.exp(-time / tone.decay) * Math.sin(2 * Math.PI * hertz * time);
      }
    }
  }
  return out;
}
