import type { Bytes } from '../bytes.ts';
import { flacFrames } from './flac-frames.ts';
import type { Packet, SoundTrack } from './sound-track.ts';

const infoBytes = 34;
const firstBlock = 4;

/**
 * The sound of a FLAC file (RFC 9639). Throws when it doesn't begin with a description of its sound.
 */
export function flacTrack(bytes: Bytes): SoundTrack {
  const head = bytes.read(0, Math.min(bytes.length, firstBlock + 4 + infoBytes));
  if (head.length < firstBlock + 4 + infoBytes || (head[firstBlock]! & 0x7f) !== 0)
    throw new Error('A FLAC file begins with a description of its sound.');
  const view = new DataView(head.buffer, head.byteOffset, head.length);
  const info = firstBlock + 4;
  const blockSize = view.getUint16(info + 2);
  const sampleRate = view.getUint32(info + 10) >>> 12;
  const total = (view.getUint8(info + 13) & 0x0f) * 2 ** 32 + view.getUint32(info + 14);
  const from = firstFrame(bytes);

  async function* packets(): AsyncGenerator<Packet> {
    for (const { header, data } of flacFrames(bytes, from)) {
      const { number, countsSamples } = header;
      yield {
        data,
        timestamp: (countsSamples ? number : number * blockSize) / sampleRate,
        duration: header.blockSize / sampleRate,
      };
    }
  }
  return {
    codec: 'flac',
    channels: ((view.getUint8(info + 12) >> 1) & 7) + 1,
    sampleRate,
    description: Uint8Array.of(0x66, 0x4c, 0x61, 0x43, 0x80, 0, 0, infoBytes, ...head.subarray(info)),
    fullCodec: 'flac',
    statedSeconds: total > 0 && sampleRate > 0 ? total / sampleRate : null,
    packets,
    close: () => undefined,
  };
}

/** Where the blocks that describe the file end. */
function firstFrame(bytes: Bytes): number {
  let at = firstBlock;
  while (at + 4 <= bytes.length) {
    const [kind, high, middle, low] = bytes.read(at, at + 4) as unknown as [number, number, number, number];
    at += 4 + high * 65536 + middle * 256 + low;
    if (kind >= 0x80) break;
  }
  return Math.min(at, bytes.length);
}
