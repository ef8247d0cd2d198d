import { homeFile } from '../offline/home-file.ts';

/** Where the page's takes are kept: in the browser, or on this computer in a folder that the page's server holds. */
export type LibraryHome = { readonly kind: 'browser' } | { readonly kind: 'folder'; readonly folder: string };

const storageKey = 'evenhand-home';
let home: Promise<LibraryHome> | undefined;

/** Asks the page's host once where takes are kept; a page opened without its host keeps to what was said last. */
export function libraryHome(): Promise<LibraryHome> {
  home ??= askHost();
  return home;
}

async function askHost(): Promise<LibraryHome> {
  const known = remembered();
  try {
    const response = await fetch(`./${homeFile}`, { cache: 'no-store' });
    const { library } = (await response.json()) as { library: { folder: string } | null | 'unknown' };
    if (library === 'unknown') return known;
    const said: LibraryHome =
      library === null ? { kind: 'browser' } : { kind: 'folder', folder: library.folder };
    remember(said);
    return said;
  } catch {
    return known;
  }
}

function remembered(): LibraryHome {
  try {
    const folder = localStorage.getItem(storageKey);
    return folder === null ? { kind: 'browser' } : { kind: 'folder', folder };
  } catch {
    return { kind: 'browser' };
  }
}

function remember(said: LibraryHome): void {
  try {
    if (said.kind === 'browser') localStorage.removeItem(storageKey);
    else localStorage.setItem(storageKey, said.folder);
  } catch {
    // A browser that keeps nothing asks again next time.
  }
}
