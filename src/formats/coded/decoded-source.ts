import { roomFor } from '../../core/signal/room-for.ts';
import type { Source } from '../../core/signal/source.ts';
import { mostKept } from '../kept-source.ts';
import type { Decoded } from './packet-decoder.ts';
import { fileStore, memoryStore, type SampleStore, type ScratchFile } from './sample-store.ts';

/** Samples of all channels together after which decoding stops: 12 hours of one channel at 48 kHz, 8 GB. */
const mostDecoded = 2 ** 31;

/** More sound than may be decoded. */
export class TooMuchSound extends Error {
  override readonly name = 'TooMuchSound';
}

export interface Room {
  /** Where sound goes that is longer than `inMemory`; without it such sound is refused. */
  readonly makeScratch?: () => ScratchFile | Promise<ScratchFile>;
  /** Samples of all channels that may stand in memory. */
  readonly inMemory?: number;
  readonly most?: number;
}

interface Expected {
  /**
   * Samples of all channels that the file says it holds. More than `inMemory` go to the scratch file from the first on:
   * memory that was once filled with sound isn't given back to the system.
   */
  readonly expected?: number;
}

export interface SoundWriter {
  /** Writes sound at the end; all of it has the channels and the rate of the first. */
  write(sound: Decoded): void;
  /** Moves what doesn't fit into memory. Rejects with `TooMuchSound`, or with what the scratch file throws. */
  makeRoom(): Promise<void>;
  /** What was written, which can't be added to any more; null when there was nothing. */
  end(): Source | null;
  close(): void;
}

/** Frames of a block, in which channels stand behind each other. */
const blockFrames = 32_768;

/**
 * Takes decoded sound and makes a recording of it that can be read at any place, in memory or, when it is long, in a
 * scratch file.
 *
 * @example
 * const writer = soundWriter({});
 * writer.write({ channels: [Float32Array.of(0, 0.5)], sampleRate: 48000 });
 * writer.end()!.read(0, 0, 3); // 0, 0.5, 0
 */
export function soundWriter({
  makeScratch,
  inMemory = mostKept,
  most = mostDecoded,
  expected = 0,
}: Room & Expected): SoundWriter {
  const memory = memoryStore();
  let store: SampleStore = memory;
  let form: { readonly count: number; readonly sampleRate: number } | null = null;
  let block: Float32Array = new Float32Array(0);
  /** Frames in the block that is being filled, and in all. */
  let filled = 0;
  let length = 0;

  function write({ channels, sampleRate }: Decoded): void {
    form ??= { count: channels.length, sampleRate };
    if (block.length === 0) block = new Float32Array(form.count * blockFrames);
    const frames = channels[0]!.length;
    for (let done = 0; done < frames; ) {
      const some = Math.min(frames - done, blockFrames - filled);
      for (const [c, samples] of channels.entries())
        block.set(samples.subarray(done, done + some), c * blockFrames + filled);
      filled += some;
      length += some;
      done += some;
      if (filled === blockFrames) next();
    }
  }
  function next(): void {
    block = store.write(block);
    filled = 0;
  }
  async function makeRoom(): Promise<void> {
    const samples = length * (form?.count ?? 0);
    if (samples > most) throw new TooMuchSound();
    if (store !== memory || samples === 0 || Math.max(samples, makeScratch ? expected : 0) <= inMemory)
      return;
    if (makeScratch === undefined) throw new TooMuchSound();
    const file = fileStore(await makeScratch(), block.length);
    store = file;
    for (const full of memory.blocks) file.write(full);
    memory.close();
  }
  function end(): Source | null {
    if (form === null || length === 0) return null;
    if (filled > 0) next();
    return storedSource(store, { ...form, length });
  }

  return { write, makeRoom, end, close: () => store.close() };
}

function storedSource(
  store: SampleStore,
  { count, sampleRate, length }: { count: number; sampleRate: number; length: number },
): Source {
  return {
    sampleRate,
    channels: count,
    length,
    read(channel, from, to, room) {
      if (!Number.isInteger(channel) || channel < 0 || channel >= count)
        throw new RangeError(`Channel ${channel} of a recording with ${count}.`);
      const samples = roomFor(Math.max(0, to - from), room);
      const last = Math.min(to, length);
      for (let at = Math.max(0, from); at < last; ) {
        const block = Math.floor(at / blockFrames);
        const some = Math.min(last, (block + 1) * blockFrames) - at;
        const inBlock = channel * blockFrames + (at - block * blockFrames);
        store.read(block, inBlock, samples.subarray(at - from, at - from + some));
        at += some;
      }
      return samples;
    },
  };
}
