import { libraryHome } from './library-home.ts';

/** Where the browser's library keeps its tables, once it was opened for the first time. */
const tables = '.evenhand-takes';

/** Whether there is a library that may hold something; on a first visit nothing of it need be loaded. */
export async function somethingKept(): Promise<boolean> {
  if ((await libraryHome()).kind === 'folder') return true;
  try {
    await (await navigator.storage.getDirectory()).getDirectoryHandle(tables);
    return true;
  } catch {
    return false;
  }
}
