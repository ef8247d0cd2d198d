import type { MakeDecoder } from './coded/decoders.ts';

const configBytes = 24;

/** Apple Lossless by the package @audio/decode-aac, which a user installs himself; null where it isn't installed. */
export async function alacByPackage(): Promise<MakeDecoder | null> {
  const installed = await import('@audio/decode-aac').catch(() => null);
  if (installed === null) return null;
  return async ({ description }) => {
    if (description === null || description.length < configBytes)
      throw new Error('Apple Lossless sound needs a description.');
    const decoder = await installed.decoder({ alac: description });
    return {
      decode(packet) {
        const { channelData, sampleRate } = decoder.decode(packet);
        return channelData.length === 0 ? null : { channels: channelData, sampleRate };
      },
      close: () => decoder.free(),
    };
  };
}
