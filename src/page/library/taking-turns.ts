import { LibraryFault } from '../../library/library-fault.ts';

/** Something that only one tab can have at a time. */
interface Shared<T> {
  open(): Promise<T>;
  close(): Promise<void>;
}

/** Tabs that use a thing in turn: whoever has it keeps it until another asks, so that one tab alone never waits. */
interface Turns<T> {
  /** Does some work with the thing, after all work that was asked for before. */
  use<R>(work: (thing: T) => Promise<R>): Promise<R>;
  /** Gives the thing up as soon as nothing is going on, until it is used again. */
  rest(): void;
}

/** How long another tab may take to give it up; one that the system has put to sleep never does. Our judgement. */
const patienceMs = 8000;

/**
 * Takes turns with other tabs of the page by a Web Lock; who wants the thing says so on a channel. Rejects with
 * `LibraryFault` `open-elsewhere` when another tab doesn't give it up.
 */
export function takingTurns<T>(name: string, thing: Shared<T>, patience = patienceMs): Turns<T> {
  const channel = new BroadcastChannel(name);
  let had: { readonly open: T; release(): void } | null = null;
  let line: Promise<unknown> = Promise.resolve();
  let givingUp = false;

  const inLine = <R>(work: () => Promise<R>): Promise<R> => {
    const done = line.then(work);
    line = done.catch(() => {});
    return done;
  };

  async function take(): Promise<T> {
    if (had !== null) return had.open;
    channel.postMessage('wanted');
    const release = await lock(name, patience);
    try {
      had = { open: await thing.open(), release };
      return had.open;
    } catch (error) {
      release();
      throw error;
    }
  }

  async function giveUp(): Promise<void> {
    givingUp = false;
    if (had === null) return;
    const { release } = had;
    had = null;
    try {
      await thing.close();
    } finally {
      release();
    }
  }

  const rest = () => {
    if (givingUp) return;
    givingUp = true;
    void inLine(giveUp).catch(() => {});
  };
  channel.addEventListener('message', rest);
  return { use: (work) => inLine(async () => work(await take())), rest };
}

/** Waits for a lock; the function that comes back gives it up. */
function lock(name: string, patience: number): Promise<() => void> {
  return new Promise((resolve, reject) => {
    navigator.locks
      .request(
        name,
        { signal: AbortSignal.timeout(patience) },
        () => new Promise<void>((release) => resolve(() => release())),
      )
      .catch(() => reject(new LibraryFault('open-elsewhere')));
  });
}
