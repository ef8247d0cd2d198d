import { inflateSync } from 'node:zlib';

/** Tables of a WOFF 1.0 file (W3C recommendation, sections 3 to 5), inflated. */
function woffTables(file: Buffer): Map<string, Buffer> {
  const tables = new Map<string, Buffer>();
  for (let i = 0; i < file.readUInt16BE(12); i++) {
    const at = 44 + 20 * i;
    const [offset, packed, length] = [4, 8, 12].map((field) => file.readUInt32BE(at + field)) as [
      number,
      number,
      number,
    ];
    const bytes = file.subarray(offset, offset + packed);
    tables.set(file.toString('latin1', at, at + 4), packed < length ? inflateSync(bytes) : bytes);
  }
  return tables;
}

/** Advance width of a character in units of the em, from the font's own cmap (format 4) and hmtx (OpenType 1.9). */
export function woffAdvance(file: Buffer, character: string): { advance: number; unitsPerEm: number } {
  const tables = woffTables(file);
  const [cmap, hmtx] = [tables.get('cmap')!, tables.get('hmtx')!];
  const starts = Array.from({ length: cmap.readUInt16BE(2) }, (_, i) => cmap.readUInt32BE(8 + 8 * i));
  const map = cmap.subarray(starts.find((start) => cmap.readUInt16BE(start) === 4)!);
  const segments = map.readUInt16BE(6) / 2;
  const code = character.codePointAt(0)!;
  const segment = Array.from({ length: segments }, (_, i) => i).find(
    (i) => map.readUInt16BE(14 + 2 * i) >= code,
  )!;
  const field = (block: number) => 16 + 2 * segments * block + 2 * segment;
  const start = map.readUInt16BE(field(1));
  const delta = map.readUInt16BE(field(2));
  const rangeAt = field(3);
  const range = map.readUInt16BE(rangeAt);
  const glyph =
    range === 0 ? (code + delta) & 0xffff : map.readUInt16BE(rangeAt + range + 2 * (code - start));
  const longMetrics = tables.get('hhea')!.readUInt16BE(34);
  return {
    advance: hmtx.readUInt16BE(4 * Math.min(glyph, longMetrics - 1)),
    unitsPerEm: tables.get('head')!.readUInt16BE(18),
  };
}
