import { adtsConfig, adtsHeaderBytes } from './coded/adts-header.ts';
import type { MakeDecoder } from './coded/decoders.ts';
import type { Decoded } from './coded/packet-decoder.ts';

/** AAC by the package @audio/decode-aac (FAAD2), which a user installs himself; null where it isn't installed. */
export async function aacByPackage(): Promise<MakeDecoder | null> {
  const installed = await import('@audio/decode-aac').catch(() => null);
  if (installed === null) return null;
  return async ({ description }) => {
    let decoder = description === null ? null : await installed.decoder({ asc: description });
    /** The first packet gives nothing, though its time runs: the decoder withholds it. */
    let withheld = 0;
    let given = false;
    return {
      async decode(packet): Promise<Decoded | null> {
        decoder ??= await installed.decoder({ asc: adtsConfig(packet) });
        const frame = description === null ? packet.subarray(adtsHeaderBytes(packet)) : packet;
        const { channelData, sampleRate } = decoder.decode([frame]);
        const frames = channelData[0]?.length ?? 0;
        if (frames === 0) {
          if (given || withheld > 0) return null;
          withheld = 1;
          return { channels: [], sampleRate };
        }
        if (given || withheld === 0) {
          given = true;
          return { channels: channelData, sampleRate };
        }
        given = true;
        const channels = channelData.map((samples) => {
          const longer = new Float32Array(2 * frames);
          longer.set(samples, frames);
          return longer;
        });
        return { channels, sampleRate };
      },
      close: () => decoder?.free(),
    };
  };
}
