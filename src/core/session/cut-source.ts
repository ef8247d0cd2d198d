import type { Hearing } from '../onsets/stroke.ts';
import { roomFor } from '../signal/room-for.ts';
import type { Source } from '../signal/source.ts';

/** A part of a recording, s from its start. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** The recording from one time to another as one of its own; nothing is copied. */
export function cutSource(source: Source, { from, to }: Stretch): Source {
  const first = Math.max(0, Math.round(from * source.sampleRate));
  const end = Math.min(source.length, Math.round(to * source.sampleRate));
  const length = Math.max(0, end - first);
  return {
    sampleRate: source.sampleRate,
    channels: source.channels,
    length,
    read: (channel, start, stop, room) => {
      const begin = Math.max(0, start);
      const last = Math.min(length, stop);
      if (begin === start && last === stop) return source.read(channel, first + begin, first + last, room);
      const out = roomFor(stop - start, room);
      if (begin < last) out.set(source.read(channel, first + begin, first + last), begin - start);
      return out;
    },
  };
}

/** What was heard from one time to another, its times counted from the first. */
export function cutHearing({ sounds, noiseFloorDb, click }: Hearing, { from, to }: Stretch): Hearing {
  const times = click?.times.filter((time) => time >= from && time < to) ?? [];
  return {
    sounds: sounds
      .filter(({ time }) => time >= from && time < to)
      .map((sound) => ({ ...sound, time: sound.time - from })),
    noiseFloorDb,
    click: click && times.length > 1 ? { ...click, times: times.map((time) => time - from) } : null,
  };
}
