import type { MakeDecoder } from '../../formats/coded/decoders.ts';
import type { Decoded } from '../../formats/coded/packet-decoder.ts';

/** Packets that may wait in the browser's decoder. */
const mostWaiting = 16;

/**
 * AAC by the browser's own decoder, packet by packet and at the recording's own rate; null where the browser has none
 * for it. Chromium's gives every packet's sound in its place, as ffmpeg does, whose decoder it is.
 */
export async function aacByBrowser(): Promise<MakeDecoder | null> {
  if (!('AudioDecoder' in globalThis)) return null;
  const common = { codec: 'mp4a.40.2', sampleRate: 48_000, numberOfChannels: 1 };
  const able = await AudioDecoder.isConfigSupported(common).catch(() => null);
  if (able?.supported !== true) return null;
  return async ({ channels, sampleRate, description, fullCodec }) => {
    const ready: Decoded[] = [];
    let failed: unknown = null;
    const decoder = new AudioDecoder({
      output: (data) => {
        ready.push(soundOf(data));
        data.close();
      },
      error: (error) => {
        failed = error;
      },
    });
    decoder.configure({
      codec: fullCodec ?? common.codec,
      sampleRate,
      numberOfChannels: channels,
      ...(description === null ? {} : { description }),
    });
    const drawn = (): Decoded => {
      if (failed !== null) throw failed;
      return joined(ready.splice(0), sampleRate);
    };
    return {
      async decode(data, timestamp) {
        const microseconds = Math.round((timestamp ?? 0) * 1e6);
        decoder.decode(new EncodedAudioChunk({ type: 'key', timestamp: microseconds, data }));
        while (failed === null && decoder.decodeQueueSize > mostWaiting)
          await new Promise((resolve) => setTimeout(resolve, 1));
        return drawn();
      },
      async end() {
        await decoder.flush();
        return drawn();
      },
      close: () => {
        if (decoder.state !== 'closed') decoder.close();
      },
    };
  };
}

function soundOf(data: AudioData): Decoded {
  const channels = Array.from({ length: data.numberOfChannels }, (_, planeIndex) => {
    const samples = new Float32Array(data.numberOfFrames);
    data.copyTo(samples, { planeIndex, format: 'f32-planar' });
    return samples;
  });
  return { channels, sampleRate: data.sampleRate };
}

function joined(pieces: readonly Decoded[], sampleRate: number): Decoded {
  const [first] = pieces;
  if (first === undefined) return { channels: [], sampleRate };
  if (pieces.length === 1) return first;
  const length = pieces.reduce((sum, { channels }) => sum + (channels[0]?.length ?? 0), 0);
  const channels = first.channels.map((_, c) => {
    const all = new Float32Array(length);
    let at = 0;
    for (const piece of pieces) {
      const samples = piece.channels[c] ?? piece.channels[0]!;
      all.set(samples, at);
      at += samples.length;
    }
    return all;
  });
  return { channels, sampleRate: first.sampleRate };
}
