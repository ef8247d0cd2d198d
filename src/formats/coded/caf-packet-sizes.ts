import type { Bytes } from '../bytes.ts';
import type { CafParts } from '../caf-parts.ts';

const blockBytes = 65_536;
/** Longest number of the table, bytes: 64 bits, seven in each. */
const longestNumber = 9;

/**
 * Sizes of a CAF file's packets, bytes and frames, in order: those that the description states for all, or those of the
 * table, in which a number's bytes hold seven bits each and all but the last have the highest set.
 */
export function* cafPacketSizes(
  bytes: Bytes,
  { packetBytes, packetFrames, packets, data }: CafParts,
): Generator<{ readonly size: number; readonly frames: number }> {
  if (packetBytes > 0 && packetFrames > 0) {
    const count = data === null ? 0 : Math.floor((data.to - data.from) / packetBytes);
    for (let i = 0; i < count; i++) yield { size: packetBytes, frames: packetFrames };
    return;
  }
  if (packets === null) return;
  let block = new Uint8Array(0);
  let from = packets.from;
  let at = 0;
  /** Null at the table's end, or where it is no number. */
  const number = (): number | null => {
    let value = 0;
    for (let i = 0; i < longestNumber; i++) {
      if (at === block.length) {
        from += block.length;
        if (from >= packets.to) return null;
        block = bytes.read(from, Math.min(packets.to, from + blockBytes)).slice();
        at = 0;
      }
      const byte = block[at++]!;
      value = value * 128 + (byte & 0x7f);
      if (byte < 0x80) return value;
    }
    return null;
  };
  for (let i = 0; i < packets.count; i++) {
    const size = packetBytes > 0 ? packetBytes : number();
    const frames = packetFrames > 0 ? packetFrames : number();
    if (size === null || frames === null) return;
    yield { size, frames };
  }
}
