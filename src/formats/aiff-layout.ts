import { bigEndianChunks } from './big-endian-chunks.ts';
import type { Bytes } from './bytes.ts';
import type { SampleShape } from './decode-pcm.ts';
import type { LayoutFault } from './recording-fault.ts';
import { type SampleData, type SampleLayoutOutcome, sampleLayout } from './sample-layout.ts';

/** Bytes of `COMM` in an AIFF file, and with the coding's name that AIFF-C adds. */
const commonBytes = { aiff: 18, aifc: 22 };
/** `SSND` begins with an offset and a block size. */
const soundHeadBytes = 8;

/** Codings of AIFF-C that are plain samples, by their four characters; null for the depth that `COMM` states. */
const plainCodings: Readonly<
  Record<string, { coding: SampleShape['coding']; bits: number | null; little?: true; unsigned?: true }>
> = {
  NONE: { coding: 'integer', bits: null },
  twos: { coding: 'integer', bits: null },
  sowt: { coding: 'integer', bits: null, little: true },
  'raw ': { coding: 'integer', bits: 8, unsigned: true },
  in24: { coding: 'integer', bits: 24 },
  in32: { coding: 'integer', bits: 32 },
  '23ni': { coding: 'integer', bits: 32, little: true },
  fl32: { coding: 'float', bits: 32 },
  FL32: { coding: 'float', bits: 32 },
  fl64: { coding: 'float', bits: 64 },
  FL64: { coding: 'float', bits: 64 },
};

/**
 * Finds format and samples in an AIFF file (Apple, Audio Interchange File Format 1.3, 1989) or one of AIFF-C (draft of
 * 1991; codings beyond it are common practice). Chunks may stand in any order.
 */
export function aiffLayout(bytes: Bytes): SampleLayoutOutcome {
  const fault = (found: LayoutFault): SampleLayoutOutcome => ({ ok: false, fault: found });
  const isAifc = String.fromCharCode(...bytes.read(8, 12)) === 'AIFC';
  let common: Uint8Array | undefined;
  let sound: SampleData | undefined;
  for (const chunk of bigEndianChunks(bytes, 12, { sizeBytes: 4, padded: true })) {
    if (chunk.id === 'COMM')
      common ??= bytes.read(chunk.from, Math.min(chunk.to, chunk.from + commonBytes.aifc));
    if (chunk.id === 'SSND') sound ??= soundOf(bytes, chunk);
    if (common && sound) break;
  }
  if (common === undefined) return fault({ code: 'no-format', facts: {} });
  if (common.length < commonBytes[isAifc ? 'aifc' : 'aiff'])
    return fault({ code: 'format-cut-short', facts: { bytes: common.length } });
  const view = new DataView(common.buffer, common.byteOffset, common.length);
  const name = isAifc ? String.fromCharCode(...common.subarray(18, 22)) : 'NONE';
  const plain = plainCodings[name];
  if (plain === undefined) return fault({ code: 'coding-unreadable', facts: { coding: name } });
  if (sound === undefined) return fault({ code: 'no-data', facts: {} });
  const bits = plain.bits ?? view.getUint16(6);
  const shape = {
    coding: plain.coding,
    channels: view.getUint16(0),
    sampleRate: extendedFloat(view, 8),
    bits,
    sampleBytes: Math.ceil(bits / 8),
    bigEndian: plain.little !== true,
    signedBytes: plain.unsigned !== true,
  };
  // A recorder that was switched off leaves 0.
  const stated = view.getUint32(2);
  return sampleLayout(shape, sound, stated === 0 || sound.open ? undefined : stated);
}

/** The samples of an `SSND` chunk, behind its head and what that leaves out; a length left at 0 is open. */
function soundOf(bytes: Bytes, { from, to, missing, open }: SampleData): SampleData {
  const unwritten = to - from === 0 && from + soundHeadBytes < bytes.length;
  const end = unwritten ? bytes.length : to;
  if (end - from < soundHeadBytes) return { from: end, to: end, missing, open };
  const head = bytes.read(from, from + soundHeadBytes);
  const offset = new DataView(head.buffer, head.byteOffset, head.length).getUint32(0);
  return { from: Math.min(end, from + soundHeadBytes + offset), to: end, missing, open: open || unwritten };
}

/** An 80-bit number (IEEE 754 double extended, as in SANE): sign and exponent in 16 bits, mantissa in 64. */
function extendedFloat(view: DataView, at: number): number {
  const exponent = view.getUint16(at) & 0x7fff;
  const mantissa = view.getUint32(at + 2) * 2 ** 32 + view.getUint32(at + 6);
  const sign = view.getUint16(at) & 0x8000 ? -1 : 1;
  return sign * mantissa * 2 ** (exponent - 16383 - 63);
}
