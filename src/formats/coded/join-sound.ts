import type { Decoded } from './packet-decoder.ts';

/** A stretch of sound that was lost; it stands as silence, so that what follows keeps its time. */
export interface Gap {
  /** Frame at which it begins. */
  readonly at: number;
  readonly frames: number;
}

/** Puts pieces of sound behind each other. */
interface SoundJoin {
  /** Leaves out what is set at the start: the decoder gets going there. */
  sound(piece: Decoded): void;
  /** Sound that should have been here, s. */
  lose(seconds: number): void;
  /** Hands on what is left; with `longest`, the last piece ends so that the whole is no longer, s. */
  end(longest: number | null): void;
  readonly lost: readonly Gap[];
}

const silentBlock = 65_536;

/**
 * Joins sound and hands it on with the channels of its first piece, cut as asked. A piece of another rate can't be
 * joined and counts as lost. `lead` is what is left out at the start, frames, or a function of the rate.
 *
 * @example
 * const join = joinSound(take, () => 1);
 * join.sound({ channels: [Float32Array.of(0.1, 0.2, 0.3)], sampleRate: 48000 });
 * join.end(1 / 48000); // take was given 0.2
 */
export function joinSound(take: (sound: Decoded) => void, lead: (sampleRate: number) => number): SoundJoin {
  const lost: Gap[] = [];
  let form: { readonly count: number; readonly sampleRate: number } | null = null;
  let skip = 0;
  let given = 0;
  /** Lost before the first sound, whose rate tells how many frames that is, s. */
  let owed = 0;
  /** The last piece, which may have to be cut. */
  let held: readonly Float32Array[] = [];

  function hand(channels: readonly Float32Array[]): void {
    const frames = channels[0]?.length ?? 0;
    const cut = Math.min(skip, frames);
    skip -= cut;
    if (frames === cut) return;
    given += frames - cut;
    take({
      channels: cut === 0 ? channels : channels.map((samples) => samples.slice(cut)),
      sampleRate: form!.sampleRate,
    });
  }
  function lose(seconds: number): void {
    if (form === null) {
      owed += seconds;
      return;
    }
    hand(held);
    held = [];
    const frames = Math.round(seconds * form.sampleRate);
    const heard = Math.max(0, frames - skip);
    const last = lost.at(-1);
    if (heard > 0 && last !== undefined && last.at + last.frames === given)
      lost[lost.length - 1] = { at: last.at, frames: last.frames + heard };
    else if (heard > 0) lost.push({ at: given, frames: heard });
    for (let done = 0; done < frames; done += silentBlock) {
      const block = new Float32Array(Math.min(silentBlock, frames - done));
      hand(Array.from({ length: form.count }, () => block.slice()));
    }
  }

  return {
    lost,
    lose,
    sound({ channels, sampleRate }) {
      const frames = channels[0]?.length ?? 0;
      if (frames === 0) return;
      if (form === null) {
        form = { count: channels.length, sampleRate };
        skip = lead(sampleRate);
        if (owed > 0) lose(owed);
      } else if (form.sampleRate !== sampleRate) return lose(frames / sampleRate);
      const { count } = form;
      hand(held);
      held = Array.from({ length: count }, (_, i) => channels[i] ?? channels[0]!);
    },
    end(longest) {
      const frames = held[0]?.length ?? 0;
      if (form !== null && longest !== null) {
        const room = Math.max(0, Math.round(longest * form.sampleRate) + skip - given);
        if (room < frames) held = held.map((samples) => samples.slice(0, room));
      }
      if ((held[0]?.length ?? 0) > 0) hand(held);
      held = [];
    },
  };
}
