import { LibraryFault } from '../../library/library-fault.ts';
import type { LibraryAnswer, LibraryWish } from './library-messages.ts';

type Settle = (answer: LibraryAnswer) => void;

/** Asks the library in the browser's private files, which a worker holds. */
export function askBrowser(): (name: string, argument: unknown) => Promise<unknown> {
  const worker = new Worker(new URL('./library-worker.ts', import.meta.url), { type: 'module' });
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
  return ask;
}
