import type { Bytes } from './bytes.ts';
import type { LayoutFault } from './recording-fault.ts';
import { kindBytes, recordingKind } from './recording-kind.ts';
import { type RiffChunk, riffChunks } from './riff-chunks.ts';
import { longestSeconds, notesOn, type SampleLayout } from './sample-layout.ts';
import { type WaveFormat, waveFormat } from './wave-format.ts';

/** Where the samples of a wave file stand and how they are written. */
export type RiffLayout = WaveFormat & SampleLayout;

type LayoutOutcome =
  | { readonly ok: true; readonly layout: RiffLayout }
  | { readonly ok: false; readonly fault: LayoutFault };

const firstChunk = 12;
/** A `ds64` chunk with an empty table. */
const ds64Bytes = 28;
/** A thousand entries; there are hardly ever any. Our judgement. */
const mostTableBytes = 12 * 1000;

/**
 * Finds format and samples in a RIFF/WAVE file (IBM and Microsoft 1991) or its 64-bit forms RF64 and BW64 (EBU
 * Tech 3306, ITU-R BS.2088). Chunks may stand in any order; of several, the first `fmt ` and the first `data` count.
 * The length that the file's own header states is not trusted: recorders that were switched off leave it wrong.
 *
 * @example
 * const bytes = memoryBytes(writeWav({ channels: [Float32Array.of(0, 0.5)], sampleRate: 48000, depth: 'int16' }));
 * riffLayout(bytes); // { ok: true, layout: { dataFrom: 44, frames: 2, channels: 1, sampleRate: 48000, … } }
 */
export function riffLayout(bytes: Bytes): LayoutOutcome {
  const head = bytes.read(0, Math.min(kindBytes, bytes.length));
  const kind = recordingKind(head);
  if (kind !== 'riff') return fault({ code: 'not-a-recording', facts: { kind } });
  const container = ascii(head.subarray(0, 4));
  const form = ascii(head.subarray(8, 12));
  if (form !== 'WAVE') return fault({ code: 'riff-without-wave', facts: { form } });
  if (container === 'RIFX') return fault({ code: 'big-endian-wave', facts: {} });

  const longSizes = container === 'RIFF' ? new Map<string, number>() : sizesBeyond32Bits(bytes);
  let formatChunk: RiffChunk | undefined;
  let data: RiffChunk | undefined;
  for (const chunk of riffChunks(bytes, firstChunk, longSizes)) {
    if (chunk.id === 'fmt ') formatChunk ??= chunk;
    if (chunk.id === 'data') data ??= chunk;
    if (formatChunk && data) break;
  }
  if (formatChunk === undefined) return fault({ code: 'no-format', facts: {} });
  const outcome = waveFormat(bytes.read(formatChunk.from, Math.min(formatChunk.to, formatChunk.from + 40)));
  if (!outcome.ok) return outcome;
  if (data === undefined) return fault({ code: 'no-data', facts: {} });

  const { format } = outcome;
  const frames = Math.floor((data.to - data.from) / format.frameBytes);
  if (frames === 0) return fault({ code: 'no-samples', facts: {} });
  if (frames > longestSeconds * format.sampleRate) return fault({ code: 'too-long', facts: {} });
  return { ok: true, layout: { ...format, dataFrom: data.from, frames, notes: notesOn(data, format) } };
}

/**
 * The lengths in a `ds64` chunk: u64 of the file, u64 of `data`, u64 of `fact`'s sample count, u32 number of table
 * entries, each an id and a u64. It must be the first chunk.
 */
function sizesBeyond32Bits(bytes: Bytes): Map<string, number> {
  const sizes = new Map<string, number>();
  const [first] = riffChunks(bytes, firstChunk);
  if (first?.id !== 'ds64' || first.to - first.from < ds64Bytes) return sizes;
  const contents = bytes.read(first.from, Math.min(first.to, first.from + ds64Bytes + mostTableBytes));
  const view = new DataView(contents.buffer, contents.byteOffset, contents.length);
  sizes.set('data', Number(view.getBigUint64(8, true)));
  const entries = Math.min(view.getUint32(24, true), Math.floor((contents.length - ds64Bytes) / 12));
  for (let entry = 0; entry < entries; entry++) {
    const at = ds64Bytes + 12 * entry;
    const id = ascii(contents.subarray(at, at + 4));
    if (!sizes.has(id)) sizes.set(id, Number(view.getBigUint64(at + 4, true)));
  }
  return sizes;
}

const fault = (found: LayoutFault): LayoutOutcome => ({ ok: false, fault: found });

const ascii = (bytes: Uint8Array): string => String.fromCharCode(...bytes);
