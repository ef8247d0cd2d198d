import type { PacketDecoder } from './packet-decoder.ts';
import type { SoundTrack } from './sound-track.ts';

export type MakeDecoder = (track: SoundTrack) => Promise<PacketDecoder>;

/** Decoders by the name of the coding; each loads when it is first needed. */
export const decoders: Readonly<Record<string, () => Promise<MakeDecoder>>> = {
  flac: async () => (await import('./flac-decoder.ts')).flacDecoder,
};
