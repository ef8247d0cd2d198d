import { delayed } from '../signal/fractional-read.ts';
import type { Source } from '../signal/source.ts';
import { soundLead } from './click-seed.ts';
import type { FoundClicks } from './find-clicks.ts';

/** Clicks kept ready: reading goes forward, and back a little over a stroke's past. */
const mostKept = 8;

interface Placed {
  readonly from: number;
  readonly samples: Float32Array;
}

function takeOff(samples: Float32Array, samplesFrom: number, { from, samples: sound }: Placed): void {
  const end = Math.min(samples.length, from + sound.length - samplesFrom);
  const ahead = samplesFrom - from;
  for (let n = Math.max(0, -ahead); n < end; n++) samples[n]! -= sound[n + ahead]!;
}

/** The same one-channel recording with the clicks' sounds taken off wherever it is read. */
export function withoutClicks(source: Source, { voices }: FoundClicks): Source {
  const rate = source.sampleRate;
  const clicks = voices
    .flatMap(({ sound, times }) => times.map((time) => ({ start: (time - soundLead) * rate, sound })))
    .sort((a, b) => a.start - b.start);
  const longest = Math.max(0, ...voices.map(({ sound }) => sound.length)) + 1;
  const kept = new Map<number, Placed>();

  function place(index: number): Placed {
    const known = kept.get(index);
    if (known !== undefined) return known;
    const { start, sound } = clicks[index]!;
    const from = Math.floor(start);
    const placed = { from, samples: delayed(sound, start - from) };
    if (kept.size >= mostKept) kept.delete(kept.keys().next().value!);
    kept.set(index, placed);
    return placed;
  }

  return {
    ...source,
    read(channel, from, to) {
      const samples = source.read(channel, from, to);
      let low = 0;
      let high = clicks.length;
      while (low < high) {
        const middle = (low + high) >> 1;
        if (clicks[middle]!.start + longest < from) low = middle + 1;
        else high = middle;
      }
      for (let index = low; index < clicks.length && clicks[index]!.start < to; index++) {
        takeOff(samples, from, place(index));
      }
      return samples;
    },
  };
}
