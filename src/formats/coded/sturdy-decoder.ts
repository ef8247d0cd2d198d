import type { MakeDecoder } from './decoders.ts';
import type { PacketDecoder } from './packet-decoder.ts';
import type { SoundTrack } from './sound-track.ts';

/** Failures after which a decoder isn't started again. Our judgement. */
const mostFailures = 20;

/**
 * A decoder that survives what damaged packets do to its library: one that fails inside WebAssembly may have spoilt its
 * memory and is replaced by a new one; the packet counts as lost. Throws when that goes on.
 */
export async function sturdyDecoder(make: MakeDecoder, track: SoundTrack): Promise<PacketDecoder> {
  let decoder = await make(track);
  let failures = 0;
  const { lead } = decoder;
  const close = (): void => {
    try {
      decoder.close();
    } catch {
      // Its memory goes with it.
    }
  };
  return {
    ...(lead === undefined ? {} : { lead }),
    async decode(packet, timestamp) {
      try {
        return await decoder.decode(packet, timestamp);
      } catch (error) {
        failures += 1;
        if (failures > mostFailures) throw error;
        close();
        decoder = await make(track);
        return null;
      }
    },
    end: async () => (await decoder.end?.()) ?? null,
    close,
  };
}
