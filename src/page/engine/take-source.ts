import type { Reason } from '../../core/result/take-result.ts';
import type { Source } from '../../core/signal/source.ts';
import { keptSource } from '../../formats/kept-source.ts';
import { memoryBytes } from '../../formats/memory-bytes.ts';
import { recordingFaultSentence } from '../../formats/recording-fault-sentences.ts';
import { riffLayout } from '../../formats/riff-layout.ts';
import { wavSource } from '../../formats/wav-source.ts';
import type { TakeSound } from './engine-messages.ts';

/** A recording's source with what was noted on opening it, or why its bytes can't be read. */
export type OpenedSound =
  | { readonly ok: true; readonly source: Source; readonly notes: readonly Reason[] }
  | { readonly ok: false; readonly sentence: string };

/** Opens the sound of a take for reading; samples are taken as they are. */
export function takeSource(sound: TakeSound, name: string): OpenedSound {
  if (!('bytes' in sound))
    return { ok: true, source: sourceOfSamples(sound.samples, sound.sampleRate), notes: [] };
  const bytes = memoryBytes(sound.bytes);
  if (bytes.length === 0)
    return { ok: false, sentence: recordingFaultSentence(name, { code: 'empty-file', facts: {} }) };
  const outcome = riffLayout(bytes);
  if (!outcome.ok) return { ok: false, sentence: recordingFaultSentence(name, outcome.fault) };
  const notes = outcome.layout.notes.map(({ code, facts }) => ({ code, facts: { ...facts } }));
  return { ok: true, source: keptSource(wavSource(bytes, outcome.layout)), notes };
}

function sourceOfSamples(channels: readonly Float32Array[], sampleRate: number): Source {
  const length = channels[0]?.length ?? 0;
  return {
    sampleRate,
    channels: channels.length,
    length,
    read(channel, from, to) {
      const samples = channels[channel];
      if (samples === undefined)
        throw new RangeError(`Channel ${channel} of a recording with ${channels.length}.`);
      const read = new Float32Array(Math.max(0, to - from));
      const first = Math.max(0, from);
      if (first < Math.min(to, length)) read.set(samples.subarray(first, Math.min(to, length)), first - from);
      return read;
    },
  };
}
