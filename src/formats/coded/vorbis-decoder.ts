import { OggVorbisDecoder } from '@wasm-audio-decoders/ogg-vorbis';
import type { PacketDecoder } from './packet-decoder.ts';
import { quietly } from './quietly.ts';
import type { SoundTrack } from './sound-track.ts';

/** The part of the package that takes packets, whatever file they came in; only its files are declared by it. */
interface Inside {
  readonly _decoder: {
    sendSetupHeader(header: Uint8Array): void;
    initDsp(): void;
    decodePackets(packets: readonly Uint8Array[]): {
      readonly channelData: Float32Array[];
      readonly samplesDecoded: number;
      readonly sampleRate: number;
      readonly errors: readonly unknown[];
    };
  };
}

/** Vorbis I by libvorbis. The first packet gives no sound, and none is due. */
export async function vorbisDecoder({ description }: SoundTrack): Promise<PacketDecoder> {
  if (description === null) throw new Error('Vorbis sound needs a description.');
  const [identification, , setup] = lacedHeaders(description);
  const decoder = new OggVorbisDecoder();
  await decoder.ready;
  const { _decoder: inside } = decoder as unknown as Inside;
  quietly(() => {
    inside.sendSetupHeader(identification);
    inside.sendSetupHeader(setup);
    inside.initDsp();
  });
  return {
    decode(packet) {
      const { channelData, sampleRate, errors } = quietly(() => inside.decodePackets([packet]));
      return errors.length > 0 ? null : { channels: channelData, sampleRate };
    },
    close: () => decoder.free(),
  };
}

/** The three headers of Vorbis behind a 2 and the lengths of the first two, in bytes of 255 and a rest (WebCodecs). */
function lacedHeaders(bytes: Uint8Array): readonly [Uint8Array, Uint8Array, Uint8Array] {
  let at = 1;
  const length = (): number => {
    let sum = 0;
    while (bytes[at] === 255) {
      sum += 255;
      at += 1;
    }
    sum += bytes[at++] ?? 0;
    return sum;
  };
  const [first, second] = [length(), length()];
  if (bytes[0] !== 2 || at + first + second >= bytes.length)
    throw new Error('The description of Vorbis sound is cut short.');
  return [
    bytes.subarray(at, at + first),
    bytes.subarray(at + first, at + first + second),
    bytes.subarray(at + first + second),
  ];
}
