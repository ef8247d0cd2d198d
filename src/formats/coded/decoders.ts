import type { PacketDecoder } from './packet-decoder.ts';
import { pcmCodings, pcmDecoder } from './pcm-decoder.ts';
import type { SoundTrack } from './sound-track.ts';

export type MakeDecoder = (track: SoundTrack) => Promise<PacketDecoder>;

/** Decoders by the name of the coding; each loads when it is first needed. AAC's comes from outside. */
export const decoders: Readonly<Record<string, () => Promise<MakeDecoder>>> = {
  flac: async () => (await import('./flac-decoder.ts')).flacDecoder,
  opus: async () => (await import('./opus-decoder.ts')).opusDecoder,
  vorbis: async () => (await import('./vorbis-decoder.ts')).vorbisDecoder,
  mp3: async () => (await import('./mp3-decoder.ts')).mp3PacketDecoder,
  'mp3-file': async () => (await import('./mp3-decoder.ts')).mp3FileDecoder,
  ...Object.fromEntries(pcmCodings.map((name) => [name, async () => pcmDecoder])),
};
