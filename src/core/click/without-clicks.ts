import { delayed } from '../signal/fractional-read.ts';
import type { Source } from '../signal/source.ts';
import { soundLead } from './click-seed.ts';
import type { FoundClicks } from './find-clicks.ts';

/** Clicks kept ready: reading goes forward, and back a little over a stroke's past. */
const mostKept = 8;
/** Samples. */
const silenceKept = 16;

interface Placed {
  readonly from: number;
  readonly samples: Float32Array;
}

/** The sound to where only silence follows, and as much of that as reading between samples reaches into. */
function withoutSilence(sound: Float32Array): Float32Array {
  return sound.subarray(0, sound.findLastIndex((x) => x !== 0) + 1 + silenceKept);
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
    .flatMap(({ sound: whole, times }) => {
      const sound = withoutSilence(whole);
      return times.map((time) => ({ start: (time - soundLead) * rate, sound }));
    })
    .sort((a, b) => a.start - b.start);
  const longest = clicks.reduce((most, { sound }) => Math.max(most, sound.length), 0) + 1;
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
