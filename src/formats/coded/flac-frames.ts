import type { Bytes } from '../bytes.ts';
import { type FlacFrameHeader, flacCrc16, flacFrameHeader, longestFlacHeader } from './flac-frame-header.ts';

interface FlacFrame {
  readonly header: FlacFrameHeader;
  readonly data: Uint8Array;
}

/** Bytes of a window of the file. A frame is far shorter: 65,535 samples of 8 channels in 4 bytes are 2 MB. */
const windowBytes = 4 * 2 ** 20;
/** Headers behind a frame after which it is given up: it is damaged, or its end is. Our judgement. */
const mostHeaders = 4;
/** The shortest frame: a header of 6 bytes, a subframe of 2, a check sum of 2. */
const leastFrame = 10;

/**
 * The whole frames of a FLAC stream, each proved by its check sum: one begins at a header and ends where the next
 * header or the file's end finds the check sum right. What is damaged is passed over. The packages at hand that look
 * for frames trust header after header instead and stop at the first damaged one, or before a frame of less than 16
 * bytes, as in the RFC's own example.
 */
export function* flacFrames(bytes: Bytes, from: number): Generator<FlacFrame> {
  let start = from;
  while (start < bytes.length) {
    const window = bytes.read(start, Math.min(bytes.length, start + windowBytes));
    const whole = start + window.length === bytes.length;
    let at = 0;
    while (at < window.length) {
      const header = flacFrameHeader(window, at);
      if (header === null) {
        at = nextSync(window, at + 1);
        continue;
      }
      const { end, next } = frameEnd(window, at, whole);
      // What may go on behind the window is read again from here.
      if (end === null && next === null && !whole && at > 0) break;
      if (end !== null) yield { header, data: window.slice(at, end) };
      at = end ?? next ?? nextSync(window, at + 1);
    }
    start += whole ? window.length : Math.max(1, Math.min(at, window.length - longestFlacHeader));
  }
}

/** Where a frame ends, if it is whole; else where the next header stands, if one does. */
function frameEnd(
  window: Uint8Array,
  at: number,
  whole: boolean,
): { readonly end: number | null; readonly next: number | null } {
  let crc = 0;
  let headers = 0;
  let next: number | null = null;
  for (let i = at; i < window.length; i++) {
    if (window[i] === 0xff && i - at >= leastFrame && flacFrameHeader(window, i) !== null) {
      if (crc === 0) return { end: i, next: null };
      next ??= i;
      headers += 1;
      if (headers === mostHeaders) return { end: null, next };
    }
    crc = flacCrc16(crc, window[i]!);
  }
  return whole && crc === 0 ? { end: window.length, next: null } : { end: null, next };
}

function nextSync(window: Uint8Array, from: number): number {
  const found = window.indexOf(0xff, from);
  return found < 0 ? window.length : found;
}
