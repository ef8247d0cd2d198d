import { bigEndianChunks } from './big-endian-chunks.ts';
import type { Bytes } from './bytes.ts';
import type { SampleData } from './sample-layout.ts';

/** What a CAF file says of its sound. */
export interface CafParts {
  /** Hz. */
  readonly sampleRate: number;
  /** Name of the coding, four characters: `lpcm` for plain samples. */
  readonly coding: string;
  readonly flags: number;
  /** Bytes and frames of a packet, 0 where they differ. */
  readonly packetBytes: number;
  readonly packetFrames: number;
  readonly channels: number;
  readonly bits: number;
  /** What the decoder has to know. */
  readonly cookie: Uint8Array | null;
  readonly packets: CafPackets | null;
  /** Null where the file has no sound. */
  readonly data: SampleData | null;
}

/** What a CAF file says of its packets. */
interface CafPackets {
  readonly count: number;
  /** Frames to be heard, frames before them and behind them that aren't. */
  readonly validFrames: number;
  readonly primingFrames: number;
  readonly remainderFrames: number;
  /** Where the table of sizes stands. */
  readonly from: number;
  readonly to: number;
}

const headBytes = 8;
const descriptionBytes = 32;
const packetHeadBytes = 24;
/** `data` begins with a count of edits. */
const editBytes = 4;
/** Descriptions of decoders are shorter. Our judgement. */
const mostCookie = 65_536;

/**
 * Reads the parts of a Core Audio Format file (Apple, Core Audio Format Specification 1.0, 2005), which may stand in
 * any order behind the first. Null when it doesn't describe its sound.
 */
export function cafParts(bytes: Bytes): CafParts | null {
  const viewOf = (from: number, to: number): DataView => {
    const part = bytes.read(from, Math.min(to, bytes.length));
    return new DataView(part.buffer, part.byteOffset, part.length);
  };
  let description: DataView | null = null;
  let cookie: Uint8Array | null = null;
  let packets: CafPackets | null = null;
  let data: SampleData | null = null;
  for (const chunk of bigEndianChunks(bytes, headBytes, { sizeBytes: 8, padded: false })) {
    const { id, from, to } = chunk;
    if (id === 'desc' && to - from >= descriptionBytes) description ??= viewOf(from, from + descriptionBytes);
    if (id === 'kuki' && to - from <= mostCookie) cookie ??= bytes.read(from, to).slice();
    if (id === 'data') data ??= { ...chunk, from: Math.min(to, from + editBytes) };
    if (id === 'pakt' && to - from >= packetHeadBytes && packets === null) {
      const view = viewOf(from, from + packetHeadBytes);
      packets = {
        count: Number(view.getBigInt64(0)),
        validFrames: Number(view.getBigInt64(8)),
        primingFrames: view.getInt32(16),
        remainderFrames: view.getInt32(20),
        from: from + packetHeadBytes,
        to,
      };
    }
  }
  if (description === null) return null;
  return {
    sampleRate: description.getFloat64(0),
    coding: [8, 9, 10, 11].map((at) => String.fromCharCode(description.getUint8(at))).join(''),
    flags: description.getUint32(12),
    packetBytes: description.getUint32(16),
    packetFrames: description.getUint32(20),
    channels: description.getUint32(24),
    bits: description.getUint32(28),
    cookie,
    packets,
    data,
  };
}
