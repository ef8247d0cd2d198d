import { joined } from '../../../core/signal/joined.ts';
import { encodeHead, encodeNote, encodeSamples, type TakeHead, type TakeNote } from './chunk-file.ts';
import { lockOf, unfinishedFolder, type WriterAnswer, type WriterWish } from './writer-messages.ts';

/** Where a recording stands outside memory: nowhere yet, being written, full, or nowhere at all. */
type WriterState = 'starting' | 'writing' | 'full' | 'unavailable';

/** Writes a recording down while it comes. Nothing of it ever stops the recording itself. */
interface TakeWriter {
  state(): WriterState;
  samples(frame: number, samples: Float32Array): void;
  note(note: TakeNote): void;
  /** Closes the file; it stays until it is removed. */
  end(): Promise<void>;
  /** Removes the file for real. */
  remove(): Promise<void>;
}

/** Frames are handed over for writing about so often, s: what a killed tab can lose at most. */
const writeSeconds = 0.25;

/** Begins to write a take into the browser's private files. `changed` is told of every change of state. */
export function writeTake(head: TakeHead, changed: (state: WriterState) => void): TakeWriter {
  const file = `${head.id}.take`;
  let state: WriterState = 'starting';
  const become = (next: WriterState) => {
    if (next === state) return;
    state = next;
    changed(next);
  };
  const worker = new Worker(new URL('./take-writer-worker.ts', import.meta.url), { type: 'module' });
  let ended: () => void = () => undefined;
  const end = new Promise<void>((resolve) => {
    ended = resolve;
  });
  worker.addEventListener('message', ({ data }: MessageEvent<WriterAnswer>) => {
    if (data.answer === 'begun') become('writing');
    if (data.answer === 'full') become('full');
    if (data.answer === 'fault') become('unavailable');
    if (data.answer !== 'begun') ended();
  });
  worker.addEventListener('error', () => {
    become('unavailable');
    ended();
  });
  const ask = (wish: WriterWish) => worker.postMessage(wish, wish.wish === 'end' ? [] : [wish.bytes.buffer]);
  ask({ wish: 'begin', file, bytes: encodeHead(head) });
  // Held as long as the tab lives and the take isn't done with.
  let letGo: () => void = () => undefined;
  void navigator.locks?.request(
    lockOf(file),
    () =>
      new Promise<void>((resolve) => {
        letGo = resolve;
      }),
  );

  let pending: { readonly frame: number; readonly parts: Float32Array[]; length: number } | null = null;
  const isOpen = () => state === 'starting' || state === 'writing';
  function handOver(): void {
    if (pending === null) return;
    ask({ wish: 'add', bytes: encodeSamples(pending.frame, joined(pending.parts)) });
    pending = null;
  }
  let closed = false;
  async function close(): Promise<void> {
    if (!closed) {
      closed = true;
      if (isOpen()) {
        handOver();
        ask({ wish: 'end' });
      } else ended();
    }
    await end;
    worker.terminate();
  }

  return {
    state: () => state,
    samples(frame, samples) {
      if (!isOpen() || closed) return;
      if (pending !== null && frame !== pending.frame + pending.length) handOver();
      pending ??= { frame, parts: [], length: 0 };
      pending.parts.push(samples);
      pending.length += samples.length;
      if (pending.length >= writeSeconds * head.sampleRate) handOver();
    },
    note(note) {
      if (!isOpen() || closed) return;
      handOver();
      ask({ wish: 'add', bytes: encodeNote(note) });
    },
    end: close,
    async remove() {
      await close();
      letGo();
      const root = await navigator.storage.getDirectory();
      const folder = await root.getDirectoryHandle(unfinishedFolder, { create: true });
      await folder.removeEntry(file).catch(() => undefined);
    },
  };
}
