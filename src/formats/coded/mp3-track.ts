import type { Bytes } from '../bytes.ts';
import { type Packet, type SoundTrack, soundTrack } from './sound-track.ts';

const pieceBytes = 16 * 1024;

/** The sound of a plain MP3 file, in pieces as they come; their decoder finds the frames. */
export async function mp3Track(bytes: Bytes): Promise<SoundTrack | null> {
  const track = await soundTrack(bytes);
  if (track?.codec !== 'mp3') return track;
  async function* packets(): AsyncGenerator<Packet> {
    for (let from = 0; from < bytes.length; from += pieceBytes) {
      const data = bytes.read(from, Math.min(bytes.length, from + pieceBytes));
      yield { data, timestamp: null, duration: null };
    }
  }
  return { ...track, codec: 'mp3-file', packets };
}
