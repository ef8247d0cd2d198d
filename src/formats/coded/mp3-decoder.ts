import { MPEGDecoder } from 'mpg123-decoder';
import type { PacketDecoder } from './packet-decoder.ts';
import { quietly } from './quietly.ts';
import type { SoundTrack } from './sound-track.ts';

/**
 * MPEG audio layers I to III by libmpg123. Of a plain file (`whole`) it is given everything, finds frames by itself and
 * leaves out the delay and padding that a LAME tag states; of packets it decodes each.
 */
const decoderOf =
  (whole: boolean) =>
  async ({ channels }: SoundTrack): Promise<PacketDecoder> => {
    const decoder = new MPEGDecoder({ enableGapless: whole });
    await decoder.ready;
    return {
      decode(packet) {
        const { channelData, samplesDecoded, sampleRate, errors } = quietly(() => decoder.decode(packet));
        if (samplesDecoded === 0) return errors.length > 0 ? null : { channels: [], sampleRate };
        // One channel comes as two.
        return { channels: channelData.slice(0, channels), sampleRate };
      },
      close: () => decoder.free(),
    };
  };

export const mp3FileDecoder = decoderOf(true);
export const mp3PacketDecoder = decoderOf(false);
