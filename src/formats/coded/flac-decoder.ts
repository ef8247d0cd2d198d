import { FLACDecoder } from '@wasm-audio-decoders/flac';
import type { PacketDecoder } from './packet-decoder.ts';
import { quietly } from './quietly.ts';
import type { SoundTrack } from './sound-track.ts';

/**
 * FLAC (RFC 9639) by libFLAC, which checks every frame's CRC. The samples are those of a wave file of the same
 * integers, to the bit; of 32-bit ones, to the nearest float. Frames that leave their depth to the head of the file,
 * which the RFC allows outside its streamable subset and encoders don't do for usual depths, count as lost: given the
 * head, the package reads beyond its memory on some files.
 */
export async function flacDecoder({ sampleRate }: SoundTrack): Promise<PacketDecoder> {
  const decoder = new FLACDecoder();
  await decoder.ready;
  return {
    async decode(packet) {
      const decoded = await quietly(() => decoder.decodeFrames([packet]));
      const { channelData, samplesDecoded, bitDepth } = decoded;
      if (samplesDecoded === 0) return null;
      for (const samples of channelData) asWave(samples, bitDepth);
      return { channels: channelData, sampleRate };
    },
    close: () => decoder.free(),
  };
}

/** The package divides integers by 2^(bits − 1) − 1, wave files are read with 2^(bits − 1). */
function asWave(samples: Float32Array, bits: number): void {
  const theirs = 2 ** (bits - 1) - 1;
  const ours = 2 ** (bits - 1);
  for (let i = 0; i < samples.length; i++) samples[i] = Math.round(samples[i]! * theirs) / ours;
}
