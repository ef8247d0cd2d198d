import { delayed, delayStep } from '../signal/fractional-read.ts';
import type { Source } from '../signal/source.ts';
import { soundLead } from './click-seed.ts';
import type { FoundClicks } from './find-clicks.ts';

/**
 * Delayed sounds kept ready. Clicks of one tempo need few: a period of 26,181.8 samples has five places between samples.
 * Reading goes forward, and back a little over a stroke's past.
 */
const mostKept = 24;
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
export function withoutClicks(source: Source, { voices }: Pick<FoundClicks, 'voices'>): Source {
  const rate = source.sampleRate;
  const clicks = voices
    .flatMap(({ sound: whole, times }, voice) => {
      const sound = withoutSilence(whole);
      return times.map((time) => ({ start: (time - soundLead) * rate, sound, voice }));
    })
    .sort((a, b) => a.start - b.start);
  const longest = clicks.reduce((most, { sound }) => Math.max(most, sound.length), 0) + 1;
  const kept = new Map<string, Float32Array>();

  function place(index: number): Placed {
    const { start, sound, voice } = clicks[index]!;
    const from = Math.floor(start);
    const key = `${voice} ${delayStep(start - from)}`;
    const samples = kept.get(key) ?? delayed(sound, start - from);
    // The one that wasn't asked for the longest goes first.
    kept.delete(key);
    if (kept.size >= mostKept) kept.delete(kept.keys().next().value!);
    kept.set(key, samples);
    return { from, samples };
  }

  return {
    ...source,
    read(channel, from, to, room) {
      const samples = source.read(channel, from, to, room);
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
