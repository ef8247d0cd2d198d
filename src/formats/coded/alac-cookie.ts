import type { Bytes } from '../bytes.ts';

const headBytes = 8;
/** Descriptions of whole films are shorter. Our judgement. */
const mostBytes = 2 ** 26;
const mostBoxes = 10_000;

/** Size and name of the box that holds the cookie, and its version and flags. */
const boxHead = [0, 0, 0, 36, ...new TextEncoder().encode('alac'), 0, 0, 0, 0];
const configBytes = 24;

/**
 * What a decoder of Apple Lossless has to know, out of the description (`moov`, ISO/IEC 14496-12) of an MP4 or
 * QuickTime file: the 24 bytes of ALACSpecificConfig; null where there are none.
 */
export function alacCookie(bytes: Bytes): Uint8Array | null {
  let at = 0;
  for (let count = 0; count < mostBoxes && at + headBytes <= bytes.length; count++) {
    const head = bytes.read(at, Math.min(bytes.length, at + 2 * headBytes));
    const view = new DataView(head.buffer, head.byteOffset, head.length);
    const stated = view.getUint32(0);
    const long = stated === 1 && head.length === 2 * headBytes;
    const size = long ? Number(view.getBigUint64(8)) : stated === 0 ? bytes.length - at : stated;
    if (size < headBytes) return null;
    if (String.fromCharCode(...head.subarray(4, 8)) === 'moov')
      return cookieIn(bytes.read(at, Math.min(bytes.length, at + Math.min(size, mostBytes))));
    at += size;
  }
  return null;
}

function cookieIn(moov: Uint8Array): Uint8Array | null {
  for (let at = moov.indexOf(36); at >= 0; at = moov.indexOf(36, at + 1)) {
    const from = at - 3;
    const to = from + boxHead.length + configBytes;
    if (from >= 0 && to <= moov.length && boxHead.every((byte, i) => moov[from + i] === byte))
      return moov.slice(to - configBytes, to);
  }
  return null;
}
