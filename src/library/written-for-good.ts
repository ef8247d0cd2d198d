import { open } from 'node:fs/promises';

/** Brings the contents of a closed file to the disk; a rename must not reach it before them. */
export async function syncFile(path: string): Promise<void> {
  const file = await open(path, 'r+');
  try {
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Brings a rename itself to the disk, where the system lets folders be opened. */
export async function syncFolder(path: string): Promise<void> {
  if (process.platform === 'win32') return;
  const folder = await open(path, 'r');
  try {
    await folder.sync();
  } finally {
    await folder.close();
  }
}
