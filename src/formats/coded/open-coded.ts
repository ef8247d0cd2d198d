import type { Source } from '../../core/signal/source.ts';
import type { Bytes } from '../bytes.ts';
import type { CodedFault, RecordingNote } from '../recording-fault.ts';
import type { RecordingKind } from '../recording-kind.ts';
import { sampleRates } from '../wave-format.ts';
import { cafTrack } from './caf-track.ts';
import { decodeTrack } from './decode-track.ts';
import { type Room, soundWriter, TooMuchSound } from './decoded-source.ts';
import { decoders, type MakeDecoder } from './decoders.ts';
import { flacTrack } from './flac-track.ts';
import type { Gap } from './join-sound.ts';
import { mp3Track } from './mp3-track.ts';
import { type Packet, type SoundTrack, soundTrack } from './sound-track.ts';
import { sturdyDecoder } from './sturdy-decoder.ts';

interface OpenCoded {
  readonly ok: true;
  readonly source: Source;
  readonly notes: readonly RecordingNote[];
  /** Stretches that could not be decoded. */
  readonly gaps: readonly Gap[];
  close(): void;
}

/** What decoding needs besides the file. */
export interface DecodingMeans extends Room {
  /** How AAC and Apple Lossless are decoded here; each resolves to null where it can't be. */
  readonly aac?: () => Promise<MakeDecoder | null>;
  readonly alac?: () => Promise<MakeDecoder | null>;
  /** Hears how much of the sound is decoded, 0 … 1. */
  readonly told?: (share: number) => void;
}

type CodedOutcome = OpenCoded | { readonly ok: false; readonly fault: CodedFault };

/** Channels of a recording; more are no recording of a player. Our judgement. */
const mostChannels = 8;
/** A recording of which more than this share is lost can't be graded. Our judgement. */
const mostLost = 0.5;
/** s. A recording that ends this much earlier than it says is told of; less is padding. */
const leastMissing = 0.25;

/**
 * Decodes the sound of a file that isn't plain samples, all of it, into memory or scratch. What is damaged stands as
 * silence and among the gaps. Rejects only with what the scratch file throws.
 */
export async function openCoded(
  file: Bytes,
  kind: RecordingKind,
  means: DecodingMeans,
): Promise<CodedOutcome> {
  const bytes = followed(file);
  const track = await trackOf(bytes, kind).catch(() => undefined);
  if (track === undefined) return fault({ code: 'coded-unreadable', facts: { kind } });
  if (track === null) return fault({ code: 'no-sound-track', facts: { kind } });
  try {
    const refusal = refused(track);
    if (refusal !== null) return fault(refusal);
    const make = await (isBrought(track.codec) ? means[track.codec] : decoders[track.codec])?.();
    if (make === undefined || make === null) return fault(withoutDecoder(track.codec));
    return await decoded(track, make, bytes, kind, means);
  } finally {
    track.close();
  }
}

async function trackOf(bytes: Bytes, kind: RecordingKind): Promise<SoundTrack | null> {
  if (kind === 'flac') return flacTrack(bytes);
  if (kind === 'caf') return cafTrack(bytes);
  return kind === 'mp3' ? mp3Track(bytes) : soundTrack(bytes);
}

function refused({ channels, sampleRate }: SoundTrack): CodedFault | null {
  if (channels === 0) return { code: 'no-channels', facts: {} };
  if (channels > mostChannels) return { code: 'too-many-channels', facts: { channels, most: mostChannels } };
  if (sampleRate < sampleRates.lowest || sampleRate > sampleRates.highest)
    return { code: 'rate-out-of-range', facts: { sampleRate, ...sampleRates } };
  return null;
}

const isBrought = (codec: string): codec is 'aac' | 'alac' => codec === 'aac' || codec === 'alac';

const withoutDecoder = (codec: string): CodedFault =>
  isBrought(codec)
    ? { code: 'decoder-missing', facts: { codec } }
    : { code: 'codec-unreadable', facts: { codec } };

async function decoded(
  track: SoundTrack,
  make: MakeDecoder,
  bytes: FollowedBytes,
  kind: RecordingKind,
  { told, ...room }: DecodingMeans,
): Promise<CodedOutcome> {
  const { channels, sampleRate, statedSeconds } = track;
  const writer = soundWriter({ ...room, expected: (statedSeconds ?? 0) * sampleRate * channels });
  try {
    const decoder = await sturdyDecoder(make, track).catch(() => null);
    if (decoder === null) return fault({ code: 'coded-unreadable', facts: { kind } });
    try {
      const { lost } = await decodeTrack(toldOf(track, bytes, told), decoder, writer);
      const source = writer.end();
      const silent = lost.reduce((sum, { frames }) => sum + frames, 0);
      if (source === null || silent > mostLost * source.length) {
        writer.close();
        return fault({ code: 'coded-unreadable', facts: { kind } });
      }
      const missingSeconds = (statedSeconds ?? 0) - source.length / source.sampleRate;
      const notes: RecordingNote[] =
        missingSeconds > leastMissing ? [{ code: 'end-missing', facts: { missingSeconds } }] : [];
      return { ok: true, source, notes, gaps: lost, close: writer.close };
    } finally {
      decoder.close();
    }
  } catch (error) {
    writer.close();
    if (error instanceof TooMuchSound) return fault({ code: 'too-long', facts: {} });
    throw error;
  }
}

/** The packets, telling how far they have come: in time, or in the file where it doesn't say how long it is. */
async function* toldOf(
  { packets, statedSeconds }: SoundTrack,
  bytes: FollowedBytes,
  told: DecodingMeans['told'],
): AsyncGenerator<Packet> {
  let furthest = 0;
  for await (const packet of packets()) {
    const { timestamp } = packet;
    const share =
      statedSeconds && timestamp !== null ? timestamp / statedSeconds : bytes.place() / bytes.length;
    furthest = Math.min(1, Math.max(furthest, share));
    told?.(furthest);
    yield packet;
  }
}

interface FollowedBytes extends Bytes {
  /** Where the last reading ended. */
  place(): number;
}

function followed({ length, read }: Bytes): FollowedBytes {
  let place = 0;
  return {
    length,
    read(from, to, room) {
      place = to;
      return read(from, to, room);
    },
    place: () => place,
  };
}

const fault = (found: CodedFault): CodedOutcome => ({ ok: false, fault: found });
