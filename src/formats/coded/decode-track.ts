import type { SoundWriter } from './decoded-source.ts';
import { type Gap, joinSound } from './join-sound.ts';
import type { Decoded, PacketDecoder } from './packet-decoder.ts';
import type { Packet } from './sound-track.ts';

interface DecodedTrack {
  readonly lost: readonly Gap[];
  /** Reading ended before the track did. */
  readonly brokeOff: boolean;
}

/** Packets this far apart (s), beyond the length of the first, have others missing between them; less is rounding. */
const leastGap = 0.05;
/**
 * s. What lacks beyond this, in all, is damage of the times, not a loss: it must not fill memory with silence. Our
 * judgement.
 */
const mostGap = 600;
/** s. No coding's packets are longer; one that says so is damaged. Our judgement. */
const longestPacket = 10;

/**
 * Decodes a track from its start and writes what is to be heard, cut to what is to be heard: the decoder's delay and
 * the padding at the end are left out as the file states them, and lost packets stand as silence. Times of packets
 * decide only where the sound starts, jumps and ends, because some containers round them to milliseconds.
 *
 * What the writer throws is thrown; a fault of the packets or the decoder ends the track.
 */
export async function decodeTrack(
  packets: AsyncIterable<Packet>,
  decoder: PacketDecoder,
  writer: Pick<SoundWriter, 'write' | 'makeRoom'>,
): Promise<DecodedTrack> {
  let first: Packet | null = null;
  let last: Packet | null = null;
  const join = joinSound(
    writer.write,
    (sampleRate) => decoder.lead ?? Math.round(Math.max(0, -(first?.timestamp ?? 0)) * sampleRate),
  );
  let lost = 0;
  const lose = (seconds: number): void => {
    if (lost + seconds > mostGap) return;
    lost += seconds;
    join.lose(seconds);
  };
  const reading = packets[Symbol.asyncIterator]();
  const step = async (): Promise<{ packet: Packet | null; sound: Decoded | null } | null> => {
    try {
      const next = await reading.next();
      if (next.done === true) return { packet: null, sound: (await decoder.end?.()) ?? null };
      const { data, timestamp } = next.value;
      return { packet: next.value, sound: await decoder.decode(data, timestamp) };
    } catch {
      return null;
    }
  };
  try {
    for (;;) {
      const outcome = await step();
      const packet = outcome?.packet ?? null;
      const sound = outcome?.sound ?? null;
      if (packet === null) {
        if (sound !== null) join.sound(sound);
        join.end(outcome === null ? null : endOf(first, last));
        return { lost: join.lost, brokeOff: outcome === null };
      }
      first ??= packet;
      const gap = gapBetween(last, packet);
      if (gap > leastGap) lose(gap);
      if (sound === null && (packet.duration ?? 0) < longestPacket) lose(packet.duration ?? 0);
      else if (sound !== null) join.sound(sound);
      last = packet;
      await writer.makeRoom();
    }
  } finally {
    await reading.return?.();
  }
}

function gapBetween(before: Packet | null, packet: Packet): number {
  // Without a length stated, as at the end of a cluster in Matroska, nothing can be told.
  if (!before?.duration || before.timestamp === null || packet.timestamp === null) return 0;
  return packet.timestamp - before.timestamp - before.duration;
}

/** s of sound to be heard, by the times that the file states. */
function endOf(first: Packet | null, last: Packet | null): number | null {
  if (first === null || last === null || first.timestamp === null || last.timestamp === null) return null;
  // Some files don't state how long their last packet is.
  return last.duration ? last.timestamp + last.duration - Math.max(0, first.timestamp) : null;
}
