/** Sound that came out of a decoder, one array a channel, all of one length; full scale ±1. */
export interface Decoded {
  readonly channels: readonly Float32Array[];
  /** Hz. */
  readonly sampleRate: number;
}

/** Turns packets into sound, in order. */
export interface PacketDecoder {
  /** Frames at the start that only set the decoder going, besides what has times before 0. */
  readonly lead?: number;
  /** The sound of a packet, which may come with a later one; null for a packet that can't be decoded. */
  decode(packet: Uint8Array, timestamp: number | null): Decoded | null | Promise<Decoded | null>;
  /** What is still to come after the last packet. */
  end?(): Decoded | null | Promise<Decoded | null>;
  close(): void;
}
