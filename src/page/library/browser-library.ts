import type { LibraryClient } from '../../library/library-calls.ts';
import { LibraryFault } from '../../library/library-fault.ts';
import type { LibraryAnswer, LibraryWish } from './library-messages.ts';

let library: LibraryClient | undefined;

/**
 * The page's library of takes, in a worker that starts when it is first asked for. Every call rejects with a
 * `LibraryFault` where takes can't be kept; the rest of the page works all the same.
 *
 * @example
 * const { takes } = await openBrowserLibrary().listTakes({ limit: 30 });
 */
export function openBrowserLibrary(): LibraryClient {
  library ??= clientOf(new Worker(new URL('./library-worker.ts', import.meta.url), { type: 'module' }));
  return library;
}

type Settle = (answer: LibraryAnswer) => void;

function clientOf(worker: Worker): LibraryClient {
  const waiting = new Map<number, Settle>();
  let count = 0;
  const send = (wish: LibraryWish) => worker.postMessage(wish);
  worker.addEventListener('message', ({ data }: MessageEvent<LibraryAnswer>) => {
    const settle = waiting.get(data.number);
    waiting.delete(data.number);
    settle?.(data);
  });
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    const facts = { reason: event.message || 'it could not be loaded' };
    for (const [number, settle] of waiting) settle({ number, ok: false, code: 'library-failed', facts });
    waiting.clear();
  });
  // A page that can't be seen may be put to sleep, and would keep the library from other tabs.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') send({ wish: 'rest' });
  });
  const ask = (name: string, argument: unknown) =>
    new Promise((resolve, reject) => {
      count++;
      waiting.set(count, (answer) => {
        if (answer.ok) resolve(answer.value);
        else reject(new LibraryFault(answer.code, answer.facts));
      });
      send({ wish: 'call', number: count, name, argument });
    });
  return new Proxy({} as LibraryClient, {
    // A library in a promise is not taken for a promise itself.
    get: (_, name) =>
      typeof name !== 'string' || name === 'then' ? undefined : (argument?: unknown) => ask(name, argument),
  });
}
