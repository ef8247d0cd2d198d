import { type ImportedFile, type ImportInto, importFile } from './import-files.ts';

export interface QueuedFile {
  readonly number: number;
  readonly file: File;
  readonly state: 'waiting' | 'working' | ImportedFile['state'];
  readonly sentence: string;
  readonly ids: readonly string[];
}

/** Files on their way into the library, one after the other. */
interface ImportQueue {
  /** Puts files at the end; they are taken in with what is chosen at this moment. */
  add(files: readonly File[], into: ImportInto): void;
  /** Leaves out what hasn't begun yet. */
  stop(): void;
  /** Forgets what is done. */
  clear(): void;
  files(): readonly QueuedFile[];
  /** Tells after every change, until the function that comes back is called. */
  onChange(tell: () => void): () => void;
}

/** One file at a time: a phone has room for one recording. */
export function importQueue(): ImportQueue {
  let files: readonly QueuedFile[] = [];
  const listeners = new Set<() => void>();
  const changed = () => {
    for (const tell of listeners) tell();
  };
  const intoOf = new Map<number, ImportInto>();
  let count = 0;
  let working = false;

  const change = (number: number, changes: Partial<QueuedFile>) => {
    files = files.map((file) => (file.number === number ? { ...file, ...changes } : file));
    changed();
  };

  async function work(): Promise<void> {
    if (working) return;
    working = true;
    for (let next = waiting(); next !== undefined; next = waiting()) {
      const { number, file } = next;
      change(number, { state: 'working', sentence: 'Being graded …' });
      const done = await importFile(file, intoOf.get(number)!);
      intoOf.delete(number);
      change(number, done);
    }
    working = false;
  }
  const waiting = () => files.find(({ state }) => state === 'waiting');

  return {
    add(added, into) {
      const queued = added.map((file): QueuedFile => {
        count++;
        intoOf.set(count, into);
        return { number: count, file, state: 'waiting', sentence: 'Waits for its turn.', ids: [] };
      });
      files = [...files, ...queued];
      changed();
      void work();
    },
    stop() {
      files = files.filter(({ state }) => state !== 'waiting');
      changed();
    },
    clear() {
      files = files.filter(({ state }) => state === 'waiting' || state === 'working');
      changed();
    },
    files: () => files,
    onChange(tell) {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
  };
}

let queue: ImportQueue | undefined;

/** The page's one queue: it goes on while other parts of the page are shown. */
export function sharedImportQueue(): ImportQueue {
  queue ??= importQueue();
  return queue;
}
