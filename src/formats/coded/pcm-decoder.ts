import { decodePcm } from '../decode-pcm.ts';
import type { PacketDecoder } from './packet-decoder.ts';
import type { SoundTrack } from './sound-track.ts';

/** Codings of plain samples by their names: how they are written, and in how many bytes. */
const shapes: Readonly<Record<string, readonly ['integer' | 'float', number]>> = {
  'pcm-s16': ['integer', 2],
  'pcm-s24': ['integer', 3],
  'pcm-s32': ['integer', 4],
  'pcm-f32': ['float', 4],
  'pcm-f64': ['float', 8],
};

export const pcmCodings = Object.keys(shapes).flatMap((name) => [name, `${name}be`]);

/** Plain samples in files that aren't wave files: little-endian, or big-endian where the name ends so. */
export async function pcmDecoder({ codec, channels, sampleRate }: SoundTrack): Promise<PacketDecoder> {
  const bigEndian = codec.endsWith('be');
  const [coding, sampleBytes] = shapes[bigEndian ? codec.slice(0, -2) : codec]!;
  const frameBytes = sampleBytes * channels;
  return {
    decode(packet) {
      const whole = packet.subarray(0, packet.length - (packet.length % frameBytes));
      return { channels: decodePcm(whole, { coding, channels, sampleBytes, bigEndian }), sampleRate };
    },
    close: () => undefined,
  };
}
