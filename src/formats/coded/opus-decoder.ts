import { OpusDecoder } from 'opus-decoder';
import { opusHead } from './opus-head.ts';
import type { PacketDecoder } from './packet-decoder.ts';
import { quietly } from './quietly.ts';
import type { SoundTrack } from './sound-track.ts';

/** Opus (RFC 6716) by libopus, at 48 kHz whatever it was made from, as the RFC recommends. */
export async function opusDecoder({ description }: SoundTrack): Promise<PacketDecoder> {
  if (description === null) throw new Error('Opus sound needs a description.');
  const { channels, preSkip, gain, streams, coupled, mapping } = opusHead(description);
  const decoder = new OpusDecoder({
    channels,
    streamCount: streams,
    coupledStreamCount: coupled,
    channelMappingTable: [...mapping],
  });
  await decoder.ready;
  return {
    lead: preSkip,
    decode(packet) {
      const { channelData, samplesDecoded, sampleRate } = quietly(() => decoder.decodeFrame(packet));
      if (samplesDecoded === 0) return null;
      if (gain !== 1)
        for (const samples of channelData) for (let i = 0; i < samples.length; i++) samples[i]! *= gain;
      return { channels: channelData, sampleRate };
    },
    close: () => decoder.free(),
  };
}
