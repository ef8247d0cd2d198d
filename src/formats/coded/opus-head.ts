/** What a file says of its Opus sound (RFC 7845, 5.1). */
interface OpusHead {
  readonly channels: number;
  /** Frames at 48 kHz that only set the decoder going. */
  readonly preSkip: number;
  /** Factor by which the sound is to be multiplied. */
  readonly gain: number;
  readonly streams: number;
  readonly coupled: number;
  /** For each channel, the decoded one that goes there. */
  readonly mapping: readonly number[];
}

/**
 * Reads the identification header. Throws for one that is cut short.
 *
 * @example
 * opusHead(Uint8Array.of(...new TextEncoder().encode('OpusHead'), 1, 2, 0x38, 1, 0x80, 0xbb, 0, 0, 0, 0, 0));
 * // { channels: 2, preSkip: 312, gain: 1, streams: 1, coupled: 1, mapping: [0, 1] }
 */
export function opusHead(bytes: Uint8Array): OpusHead {
  if (bytes.length < 19) throw new Error('The description of Opus sound is cut short.');
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const channels = view.getUint8(9);
  const preSkip = view.getUint16(10, true);
  const gain = 10 ** (view.getInt16(16, true) / 256 / 20);
  if (view.getUint8(18) === 0)
    return { channels, preSkip, gain, streams: 1, coupled: channels - 1, mapping: [0, 1].slice(0, channels) };
  const mapping = [...bytes.subarray(21, 21 + channels)];
  if (mapping.length < channels) throw new Error('The description of Opus sound is cut short.');
  return { channels, preSkip, gain, streams: view.getUint8(19), coupled: view.getUint8(20), mapping };
}
