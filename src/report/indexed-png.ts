import { deflateSync } from 'node:zlib';
import { crc32 } from '../formats/crc32.ts';
import { joinedBytes } from '../formats/joined-bytes.ts';

/** Pixels in rows from the top, four bytes each: red, green, blue, and one that is left out of account. */
interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8Array;
}

const signature = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/**
 * A PNG with a palette of the picture's `colours` (at most 256) most frequent colours; rarer ones (soft edges) take
 * the nearest of them. A chart has few colours, so the file is a third of a full-colour one; with 16 colours two
 * pixels share a byte, and it is a fifth. Format: W3C PNG, third edition, colour type 3, one unfiltered zlib stream.
 */
export function indexedPng({ width, height, rgba }: Pixels, colours = 256): Uint8Array {
  const colourAt = (i: number) => (rgba[4 * i]! << 16) | (rgba[4 * i + 1]! << 8) | rgba[4 * i + 2]!;
  const counts = new Map<number, number>();
  for (let i = 0; i < width * height; i++) counts.set(colourAt(i), (counts.get(colourAt(i)) ?? 0) + 1);
  const byCount = [...counts.entries()].sort((a, b) => b[1] - a[1] || a[0] - b[0]).map(([colour]) => colour);
  const palette = byCount.slice(0, colours);
  const indexOf = new Map(byCount.map((colour, i) => [colour, i < colours ? i : nearest(colour, palette)]));
  const bits = colours > 16 ? 8 : 4;
  const rowBytes = 1 + Math.ceil((width * bits) / 8);
  const rows = new Uint8Array(height * rowBytes);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const index = indexOf.get(colourAt(y * width + x))!;
      if (bits === 8) rows[y * rowBytes + 1 + x] = index;
      else rows[y * rowBytes + 1 + (x >> 1)]! |= x % 2 === 0 ? index << 4 : index;
    }
  }
  const header = new Uint8Array(13);
  new DataView(header.buffer).setUint32(0, width);
  new DataView(header.buffer).setUint32(4, height);
  header.set([bits, 3, 0, 0, 0], 8);
  return joinedBytes([
    Uint8Array.from(signature),
    chunk('IHDR', header),
    chunk(
      'PLTE',
      Uint8Array.from(palette.flatMap((colour) => [colour >> 16, (colour >> 8) & 255, colour & 255])),
    ),
    chunk('IDAT', deflateSync(rows, { level: 9, memLevel: 9 })),
    chunk('IEND', new Uint8Array(0)),
  ]);
}

function nearest(colour: number, palette: readonly number[]): number {
  const distance = (other: number) =>
    ((colour >> 16) - (other >> 16)) ** 2 +
    (((colour >> 8) & 255) - ((other >> 8) & 255)) ** 2 +
    ((colour & 255) - (other & 255)) ** 2;
  let best = 0;
  palette.forEach((other, i) => {
    if (distance(other) < distance(palette[best]!)) best = i;
  });
  return best;
}

/** Length, type, content and checksum of both, as every part of a PNG is laid out. */
function chunk(type: string, content: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(12 + content.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, content.length);
  bytes.set(new TextEncoder().encode(type), 4);
  bytes.set(content, 8);
  view.setUint32(8 + content.length, crc32(bytes.subarray(4, 8 + content.length)));
  return bytes;
}
