/** What the header of a FLAC frame says (RFC 9639, 9.1). */
export interface FlacFrameHeader {
  /** Number of the frame where all have one size, else of its first sample. */
  readonly number: number;
  readonly countsSamples: boolean;
  /** Samples of each channel. */
  readonly blockSize: number;
  readonly headerBytes: number;
}

/** Bytes that a frame's header has at most. */
export const longestFlacHeader = 16;

/**
 * Reads a frame's header at a place of a buffer; null where none stands, or one with a wrong check sum.
 *
 * @example
 * // The frame of RFC 9639, D.1.3
 * flacFrameHeader(Uint8Array.of(0xff, 0xf8, 0x69, 0x18, 0x00, 0x00, 0xbf), 0);
 * // { number: 0, countsSamples: false, blockSize: 1, headerBytes: 7 }
 */
export function flacFrameHeader(bytes: Uint8Array, at: number): FlacFrameHeader | null {
  const byte = (i: number): number => bytes[at + i] ?? 0;
  if (byte(0) !== 0xff || (byte(1) & 0xfe) !== 0xf8) return null;
  const sizeCode = byte(2) >> 4;
  const rateCode = byte(2) & 0x0f;
  if (sizeCode === 0 || rateCode === 15 || byte(3) >> 4 > 10 || (byte(3) & 1) === 1) return null;
  // A number of n bytes begins with n ones, 0 for a single byte.
  const ones = Math.clz32(~(byte(4) << 24));
  if (ones === 1 || ones > 7) return null;
  let number = byte(4) & (0x7f >> ones);
  let next = 5;
  for (; next < 4 + Math.max(1, ones); next++) {
    if (byte(next) >> 6 !== 2) return null;
    number = number * 64 + (byte(next) & 0x3f);
  }
  let blockSize = sizeCode === 1 ? 192 : sizeCode < 6 ? 144 << sizeCode : 256 << (sizeCode - 8);
  if (sizeCode === 6) blockSize = byte(next++) + 1;
  else if (sizeCode === 7) {
    blockSize = byte(next) * 256 + byte(next + 1) + 1;
    next += 2;
  }
  if (rateCode === 12) next += 1;
  else if (rateCode > 12) next += 2;
  if (at + next >= bytes.length || crc8(bytes, at, at + next) !== byte(next)) return null;
  return { number, countsSamples: (byte(1) & 1) === 1, blockSize, headerBytes: next + 1 };
}

/** Check sum of a header: x^8 + x^2 + x + 1, from 0. */
function crc8(bytes: Uint8Array, from: number, to: number): number {
  let crc = 0;
  for (let i = from; i < to; i++) {
    crc ^= bytes[i]!;
    for (let bit = 0; bit < 8; bit++) crc = crc & 0x80 ? ((crc << 1) ^ 0x07) & 0xff : crc << 1;
  }
  return crc;
}

/** Remainders of the check sum of frames: x^16 + x^15 + x^2 + 1. */
const remainders = Uint16Array.from({ length: 256 }, (_, byte) => {
  let crc = byte << 8;
  for (let bit = 0; bit < 8; bit++) crc = crc & 0x8000 ? ((crc << 1) ^ 0x8005) & 0xffff : crc << 1;
  return crc;
});

/** Check sum of a frame so far and of the next byte; 0 behind a whole frame, whose own check sum stands at its end. */
export const flacCrc16 = (crc: number, byte: number): number =>
  ((crc << 8) & 0xffff) ^ remainders[(crc >> 8) ^ byte]!;
