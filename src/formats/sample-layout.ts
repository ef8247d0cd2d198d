import type { SampleShape } from './decode-pcm.ts';
import type { LayoutFault, RecordingNote } from './recording-fault.ts';
import { mostChannels, readableBytes, sampleRates, type WaveFormat } from './wave-format.ts';

/** Where the samples of a file of plain samples stand, and how they are written. */
export interface SampleLayout extends SampleShape, Pick<WaveFormat, 'sampleRate' | 'frameBytes'> {
  /** Offset of the first sample in the file. */
  readonly dataFrom: number;
  /** Whole frames that the file holds. */
  readonly frames: number;
  readonly notes: readonly RecordingNote[];
}

export type SampleLayoutOutcome =
  | { readonly ok: true; readonly layout: SampleLayout }
  | { readonly ok: false; readonly fault: LayoutFault };

/** The part of a file that holds samples, from its first byte to behind its last. */
export interface SampleData {
  readonly from: number;
  readonly to: number;
  /** Bytes that the file promises and doesn't hold. */
  readonly missing: number;
  /** The writer left the length open. */
  readonly open: boolean;
}

/** A day: longer is a recorder that was forgotten. Our judgement. */
export const longestSeconds = 24 * 3600;

/** What was mended of the samples' length. */
export function notesOn(
  { open, missing }: Pick<SampleData, 'open' | 'missing'>,
  { frameBytes, sampleRate }: Pick<SampleLayout, 'frameBytes' | 'sampleRate'>,
): RecordingNote[] {
  if (open) return [{ code: 'length-not-written', facts: {} }];
  if (missing < frameBytes) return [];
  return [{ code: 'end-missing', facts: { missingSeconds: missing / frameBytes / sampleRate } }];
}

/**
 * The layout of samples that are written as `shape` says, or what is wrong with it. `statedFrames` ends them earlier
 * than the data do.
 */
export function sampleLayout(
  shape: SampleShape & { readonly sampleRate: number; readonly bits: number },
  data: SampleData,
  statedFrames = Number.POSITIVE_INFINITY,
): SampleLayoutOutcome {
  const fault = (found: LayoutFault): SampleLayoutOutcome => ({ ok: false, fault: found });
  const { bits, ...written } = shape;
  const { coding, channels, sampleRate, sampleBytes } = written;
  if (channels === 0) return fault({ code: 'no-channels', facts: {} });
  if (channels > mostChannels)
    return fault({ code: 'too-many-channels', facts: { channels, most: mostChannels } });
  if (!(sampleRate >= sampleRates.lowest && sampleRate <= sampleRates.highest))
    return fault({ code: 'rate-out-of-range', facts: { sampleRate, ...sampleRates } });
  if (!readableBytes[coding].includes(sampleBytes)) {
    const name = coding === 'float' ? 'IEEE float' : 'PCM';
    return fault({ code: 'depth-unreadable', facts: { coding: name, bits } });
  }
  const frameBytes = sampleBytes * channels;
  const frames = Math.min(statedFrames, Math.floor((data.to - data.from) / frameBytes));
  if (frames <= 0) return fault({ code: 'no-samples', facts: {} });
  if (frames > longestSeconds * sampleRate) return fault({ code: 'too-long', facts: {} });
  const layout = { ...written, frameBytes, dataFrom: data.from, frames };
  return { ok: true, layout: { ...layout, notes: notesOn(data, layout) } };
}
