import type { Bytes } from '../bytes.ts';
import { type CafParts, cafParts } from '../caf-parts.ts';
import { cafPacketSizes } from './caf-packet-sizes.ts';
import { decoderInfo } from './decoder-info.ts';
import type { Packet, SoundTrack } from './sound-track.ts';

/** Names of codings elsewhere, by those of CAF. */
const codecs: Readonly<Record<string, string>> = {
  'aac ': 'aac',
  aach: 'aac',
  aacp: 'aac',
  alac: 'alac',
  opus: 'opus',
  flac: 'flac',
  '.mp3': 'mp3',
};

/** The coded sound of a CAF file; null when it has none. Throws when it doesn't say what it holds. */
export function cafTrack(bytes: Bytes): SoundTrack | null {
  const parts = cafParts(bytes);
  if (parts === null) throw new Error('A CAF file describes its sound.');
  const { sampleRate, channels, coding, packets, data } = parts;
  if (data === null) return null;
  const codec = codecs[coding] ?? coding.trim();
  const priming = Math.max(0, packets?.primingFrames ?? 0);
  const heard = packets !== null && packets.validFrames > 0 ? packets.validFrames : null;

  async function* eachPacket(): AsyncGenerator<Packet> {
    let at = data!.from;
    let frame = -priming;
    for (const { size, frames } of cafPacketSizes(bytes, parts!)) {
      if (at + size > data!.to) return;
      const last = heard === null ? frames : Math.min(frames, heard - frame);
      yield {
        data: bytes.read(at, at + size).slice(),
        timestamp: frame / sampleRate,
        duration: Math.max(0, last) / sampleRate,
      };
      at += size;
      frame += frames;
    }
  }
  return {
    codec,
    channels,
    sampleRate,
    description: descriptionOf(codec, parts),
    fullCodec: null,
    statedSeconds: heard === null ? null : heard / sampleRate,
    packets: eachPacket,
    close: () => undefined,
  };
}

/** What the decoder has to know, as other files have it. */
function descriptionOf(codec: string, { cookie, channels, packets }: CafParts): Uint8Array | null {
  if (codec === 'aac') return cookie === null ? null : decoderInfo(cookie);
  // An identification header (RFC 7845, 5.1) of one stream, for at most two channels.
  if (codec === 'opus') {
    const priming = packets?.primingFrames ?? 0;
    const magic = new TextEncoder().encode('OpusHead');
    return Uint8Array.of(
      ...magic,
      1,
      channels,
      priming & 255,
      (priming >> 8) & 255,
      0x80,
      0xbb,
      0,
      0,
      0,
      0,
      0,
    );
  }
  return cookie;
}
