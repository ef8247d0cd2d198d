const decoderConfiguration = 0x04;
const decoderSpecific = 0x05;
const streamDescription = 0x03;

/**
 * The AudioSpecificConfig in an elementary stream's description (ISO/IEC 14496-1, 7.2.6: descriptors of a tag, a length
 * in seven bits a byte, and contents), as MP4 and CAF files carry it for AAC; null where there is none.
 *
 * @example decoderInfo(Uint8Array.of(0x05, 2, 0x12, 0x08)) // 0x12, 0x08
 */
export function decoderInfo(esds: Uint8Array): Uint8Array | null {
  let at = 0;
  let found: Uint8Array | null = null;
  const walk = (to: number): void => {
    while (at + 1 < to && found === null) {
      const tag = esds[at++]!;
      let length = 0;
      for (let i = 0; i < 4 && at < to; i++) {
        const byte = esds[at++]!;
        length = length * 128 + (byte & 0x7f);
        if (byte < 0x80) break;
      }
      const end = Math.min(to, at + length);
      if (tag === streamDescription) {
        const flags = esds[at + 2] ?? 0;
        const skipped = 3 + (flags & 0x80 ? 2 : 0) + (flags & 0x20 ? 2 : 0);
        at += flags & 0x40 ? skipped + 1 + (esds[at + skipped] ?? 0) : skipped;
        walk(end);
      } else if (tag === decoderConfiguration) {
        at += 13;
        walk(end);
      } else if (tag === decoderSpecific) found = esds.slice(at, end);
      at = end;
    }
  };
  walk(esds.length);
  return found;
}
