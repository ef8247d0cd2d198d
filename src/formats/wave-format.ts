import { lowestSampleRate } from '../core/signal/lowest-sample-rate.ts';
import type { LayoutFault } from './recording-fault.ts';
import { extensibleTag, floatTag, pcmTag, waveCodings } from './wave-codings.ts';

/** How the samples of a wave file are written. */
export interface WaveFormat {
  /** Integers are offset binary in 8 bits and two's complement in more, little-endian. */
  readonly coding: 'integer' | 'float';
  readonly channels: number;
  /** Hz. */
  readonly sampleRate: number;
  /** Bytes that hold one sample of one channel. */
  readonly sampleBytes: number;
  /** Bits of the sample that carry sound; they stand at its upper end. */
  readonly validBits: number;
  /** Bytes of one sample of every channel. */
  readonly frameBytes: number;
}

type FormatOutcome =
  | { readonly ok: true; readonly format: WaveFormat }
  | { readonly ok: false; readonly fault: LayoutFault };

/** Hz. Up to the highest rate of common sound cards; common practice. */
export const sampleRates = { lowest: lowestSampleRate, highest: 192_000 };

/** More are no recording of a player, and a block of them would fill the memory. Our judgement. */
export const mostChannels = 32;

/** Depths that are read, in bytes a sample. */
export const readableBytes = { integer: [1, 2, 3, 4], float: [4, 8] };

/** Last 14 bytes of every sub-format GUID that stands for a format tag: xxxxxxxx-0000-0010-8000-00AA00389B71. */
const tagGuidTail = [0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71];

/**
 * Reads the contents of a `fmt ` chunk: WAVEFORMAT and its PCM extension (IBM and Microsoft, Multimedia
 * Programming Interface and Data Specifications 1.0, 1991), WAVE_FORMAT_IEEE_FLOAT and WAVE_FORMAT_EXTENSIBLE
 * (Microsoft, Multiple Channel Audio Data and WAVE Files, 2001). The byte rate, which follows from the others and is
 * often wrong, isn't looked at.
 *
 * @example
 * // PCM, 1 channel, 44100 Hz, 88200 bytes/s, 2 bytes a frame, 16 bits
 * waveFormat(Uint8Array.of(1, 0, 1, 0, 0x44, 0xac, 0, 0, 0x88, 0x58, 1, 0, 2, 0, 16, 0));
 * // { ok: true, format: { coding: 'integer', channels: 1, sampleRate: 44100, sampleBytes: 2, … } }
 */
export function waveFormat(chunk: Uint8Array): FormatOutcome {
  if (chunk.length < 16) return fault({ code: 'format-cut-short', facts: { bytes: chunk.length } });
  const view = new DataView(chunk.buffer, chunk.byteOffset, chunk.length);
  const extensible = view.getUint16(0, true) === extensibleTag;
  if (extensible && chunk.length < 40)
    return fault({ code: 'format-cut-short', facts: { bytes: chunk.length } });
  if (extensible && !tagGuidTail.every((byte, index) => chunk[26 + index] === byte)) {
    return fault({ code: 'coding-unreadable', facts: { coding: hex(chunk.subarray(24, 40)) } });
  }
  const tag = view.getUint16(extensible ? 24 : 0, true);
  if (tag !== pcmTag && tag !== floatTag) {
    const coding = waveCodings.get(tag) ?? `0x${tag.toString(16).padStart(4, '0')}`;
    return fault({ code: 'coding-unreadable', facts: { coding } });
  }

  const coding = tag === floatTag ? 'float' : 'integer';
  const channels = view.getUint16(2, true);
  const sampleRate = view.getUint32(4, true);
  const bits = view.getUint16(14, true);
  if (channels === 0) return fault({ code: 'no-channels', facts: {} });
  if (sampleRate < sampleRates.lowest || sampleRate > sampleRates.highest) {
    return fault({ code: 'rate-out-of-range', facts: { sampleRate, ...sampleRates } });
  }
  // 20 bits in 3 bytes and 24 bits in 4 are allowed, so the frame decides; some writers leave it 0.
  const leastBytes = Math.ceil(bits / 8);
  const frameBytes = view.getUint16(12, true) || channels * leastBytes;
  const sampleBytes = frameBytes / channels;
  if (bits === 0 || !readableBytes[coding].includes(leastBytes)) {
    return fault({ code: 'depth-unreadable', facts: { coding: waveCodings.get(tag)!, bits } });
  }
  if (!readableBytes[coding].includes(sampleBytes) || sampleBytes < leastBytes || frameBytes > 0xffff) {
    return fault({ code: 'frame-size-contradiction', facts: { frameBytes, channels, bits } });
  }
  if (channels > mostChannels) {
    return fault({ code: 'too-many-channels', facts: { channels, most: mostChannels } });
  }
  const stated = extensible ? view.getUint16(18, true) : bits;
  const validBits = stated >= 1 && stated <= bits ? stated : bits;
  return { ok: true, format: { coding, channels, sampleRate, sampleBytes, validBits, frameBytes } };
}

const fault = (found: LayoutFault): FormatOutcome => ({ ok: false, fault: found });

const hex = (bytes: Uint8Array): string =>
  [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
