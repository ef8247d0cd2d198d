import { randomUUID } from 'node:crypto';
import { closeSync, openSync, readSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { ScratchFile } from './coded/sample-store.ts';

/**
 * A file in the system's temporary folder whose name is taken away as soon as it is open: however the program ends,
 * nothing of it is left. Where a system keeps the name of an open file, it goes when the file is closed.
 */
export function scratchFile(): ScratchFile {
  const path = join(tmpdir(), `evenhand-${randomUUID()}.tmp`);
  const descriptor = openSync(path, 'wx+', 0o600);
  const forget = (): void => rmSync(path, { force: true });
  let named = false;
  try {
    forget();
  } catch {
    named = true;
    process.once('exit', forget);
  }
  let length = 0;
  return {
    write(bytes) {
      for (let done = 0; done < bytes.length; )
        done += writeSync(descriptor, bytes, done, bytes.length - done, length + done);
      length += bytes.length;
    },
    read(from, bytes) {
      for (let done = 0; done < bytes.length; ) {
        const count = readSync(descriptor, bytes, done, bytes.length - done, from + done);
        if (count === 0) throw new Error('A temporary file became shorter while it was read.');
        done += count;
      }
    },
    close() {
      closeSync(descriptor);
      if (!named) return;
      process.off('exit', forget);
      forget();
    },
  };
}
