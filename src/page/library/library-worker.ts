import type { Library } from '../../library/library.ts';
import { type LibraryCallName, libraryCalls } from '../../library/library-calls.ts';
import { faultOfCall } from '../../library/library-fault.ts';
import { browserHome } from './browser-home.ts';
import type { LibraryAnswer, LibraryWish } from './library-messages.ts';
import { takingTurns } from './taking-turns.ts';

const scope = globalThis as unknown as {
  postMessage(message: LibraryAnswer, transfer: Transferable[]): void;
  addEventListener(type: 'message', take: (event: MessageEvent<LibraryWish>) => void): void;
};

const turns = takingTurns('evenhand-takes', browserHome());

scope.addEventListener('message', async ({ data }) => {
  if (data.wish === 'rest') return turns.rest();
  const { number, name, argument } = data;
  try {
    const call = libraryCalls[name as LibraryCallName] as (
      library: Library,
      argument: unknown,
    ) => Promise<unknown>;
    const value = await turns.use((library) => call(library, argument));
    scope.postMessage({ number, ok: true, value }, value instanceof Uint8Array ? [value.buffer] : []);
  } catch (error) {
    const { code, facts } = faultOfCall(error);
    scope.postMessage({ number, ok: false, code, facts }, []);
  }
});
