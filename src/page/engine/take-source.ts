import type { RecordingGap } from '../../core/grading/recording-gaps.ts';
import type { Reason } from '../../core/result/take-result.ts';
import type { Source } from '../../core/signal/source.ts';
import { memoryBytes } from '../../formats/memory-bytes.ts';
import { openSound } from '../../formats/open-sound.ts';
import type { LayoutFault } from '../../formats/recording-fault.ts';
import { installed, recordingFaultSentence } from '../../formats/recording-fault-sentences.ts';
import { decodingMeans } from './decoding-means.ts';
import type { TakeSound } from './engine-messages.ts';
import { sourceOfSamples } from './source-of-samples.ts';

/** A recording's source with what was noted on opening it, or why its bytes can't be read. */
type OpenedSound =
  | {
      readonly ok: true;
      readonly source: Source;
      readonly notes: readonly Reason[];
      readonly gaps: readonly RecordingGap[];
      close(): void;
    }
  | { readonly ok: false; readonly sentence: string };

/** Opens the sound of a take for reading; samples are taken as they are. */
export async function takeSource(sound: TakeSound, name: string): Promise<OpenedSound> {
  if (!('bytes' in sound)) {
    const source = sourceOfSamples(sound.samples, sound.sampleRate);
    return { ok: true, source, notes: [], gaps: [], close: () => undefined };
  }
  const opened = await openSound(memoryBytes(sound.bytes), decodingMeans);
  if (!opened.ok) return { ok: false, sentence: sentenceOf(name, opened.fault) };
  const notes = opened.notes.map(({ code, facts }) => ({ code, facts: { ...facts } }));
  return { ...opened, notes };
}

/** In a browser nothing can be installed. */
const sentenceOf = (name: string, fault: LayoutFault): string =>
  fault.code === 'decoder-missing'
    ? `"${name}" holds sound coded as ${installed[fault.facts.codec]}, which this browser can't decode. Save it as a WAV or FLAC file and choose that.`
    : recordingFaultSentence(name, fault);
