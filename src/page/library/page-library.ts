import type { LibraryClient } from '../../library/library-calls.ts';
import { askBrowser } from './ask-browser.ts';
import { askServer } from './ask-server.ts';
import { libraryHome } from './library-home.ts';

type Ask = (name: string, argument: unknown) => Promise<unknown>;

let library: LibraryClient | undefined;
let asking: Promise<Ask> | undefined;

const asked = async (): Promise<Ask> => ((await libraryHome()).kind === 'browser' ? askBrowser() : askServer);

/**
 * The page's library of takes: the one that the server of this page holds in a folder, else the browser's own, in a
 * worker that starts when it is first asked for. Every call rejects with a `LibraryFault` where takes can't be kept;
 * the rest of the page works all the same.
 *
 * @example
 * const { takes } = await pageLibrary().listTakes({ limit: 30 });
 */
export function pageLibrary(): LibraryClient {
  library ??= new Proxy({} as LibraryClient, {
    // A library in a promise is not taken for a promise itself.
    get: (_, name) =>
      typeof name !== 'string' || name === 'then'
        ? undefined
        : async (argument?: unknown) => {
            asking ??= asked();
            return (await asking)(name, argument);
          },
  });
  return library;
}
