import {
  ADTS,
  CustomSource,
  EncodedPacketSink,
  FLAC,
  Input,
  type InputAudioTrack,
  Logging,
  MATROSKA,
  MP3,
  MP4,
  OGG,
  QTFF,
  WEBM,
} from 'mediabunny';
import type { Bytes } from '../bytes.ts';
import { alacCookie } from './alac-cookie.ts';

/** A piece of coded sound as the file holds it. */
export interface Packet {
  readonly data: Uint8Array;
  /** s from the start of what is to be heard; what lies before 0 only sets the decoder going. Null where unknown. */
  readonly timestamp: number | null;
  /** s of sound in it; the last packet's may end early. Null where unknown. */
  readonly duration: number | null;
}

/** The sound of a file, video or not, still coded. */
export interface SoundTrack {
  /**
   * Name of the coding in the WebCodecs registry, such as `flac`; or the container's own name where it has none there.
   */
  readonly codec: string;
  readonly channels: number;
  /** Hz. */
  readonly sampleRate: number;
  /** What the decoder has to know before the first packet, as WebCodecs defines it. */
  readonly description: Uint8Array | null;
  /** The coding in full, such as `mp4a.40.2`, where it is known. */
  readonly fullCodec: string | null;
  /** s of sound that the file states, if it does. */
  readonly statedSeconds: number | null;
  packets(): AsyncIterable<Packet>;
  close(): void;
}

/** What may be held of the file while packets are read, bytes. */
const mostCached = 4 * 2 ** 20;

/** Only what lies in one file and needs no net. MP3 is looked for late: chance can put its marks anywhere. */
const formats = [MP4, QTFF, MATROSKA, WEBM, OGG, FLAC, MP3, ADTS];

// Faults are told in one sentence of our own.
Logging.level = 0;

/**
 * Finds the sound in a FLAC, MP3, ADTS, Ogg, WebM, MP4 or QuickTime file; null when it holds none. Rejects when the
 * file is no such file or is damaged where it says what it holds.
 */
export async function soundTrack(bytes: Bytes): Promise<SoundTrack | null> {
  const source = new CustomSource({
    getSize: () => bytes.length,
    // The demuxer keeps what it is given.
    read: (from, to) => bytes.read(from, to).slice(),
    maxCacheSize: mostCached,
    handleUnhandledError: () => undefined,
  });
  refuseCircles(source, 50_000 + bytes.length / 4);
  const input = new Input({ source, formats });
  try {
    const track = await input.getPrimaryAudioTrack();
    if (track === null) {
      input.dispose();
      return null;
    }
    const config = await track.getDecoderConfig();
    const named = (await track.getCodec()) ?? track.internalCodecId;
    const codec = typeof named === 'string' ? named : 'unknown';
    // The demuxer doesn't know this coding, but takes its packets out.
    const cookie = codec === 'alac' ? alacCookie(bytes) : null;
    return {
      codec,
      channels: await track.getNumberOfChannels(),
      sampleRate: await track.getSampleRate(),
      description: config?.description === undefined ? cookie : bytesOf(config.description),
      fullCodec: config?.codec ?? null,
      statedSeconds: await statedSeconds(input, track),
      packets: () => new EncodedPacketSink(track).packets(),
      close: () => input.dispose(),
    };
  } catch (error) {
    input.dispose();
    throw error;
  }
}

/**
 * The demuxer can go round in a circle in a damaged file, without ever letting others work. It asks for the file's size
 * each time round, and is refused after more askings than any sound file needs.
 */
function refuseCircles(source: CustomSource, most: number): void {
  const asked = source as unknown as { _getFileSize(): number | null | undefined };
  const sizeOf = asked._getFileSize.bind(source);
  let times = 0;
  asked._getFileSize = () => {
    times += 1;
    if (times > most) throw new Error('No way was found through a damaged file.');
    return sizeOf();
  };
}

/** WebM states how long the whole is: with video, that tells nothing of the sound. */
async function statedSeconds(input: Input, track: InputAudioTrack): Promise<number | null> {
  const format = await input.getFormat();
  const ofAll = format === WEBM || format === MATROSKA;
  if (ofAll && (await input.getPrimaryVideoTrack()) !== null) return null;
  return track.getDurationFromMetadata();
}

const bytesOf = (buffer: AllowSharedBufferSource): Uint8Array =>
  ArrayBuffer.isView(buffer)
    ? new Uint8Array(buffer.buffer, buffer.byteOffset, buffer.byteLength)
    : new Uint8Array(buffer);
