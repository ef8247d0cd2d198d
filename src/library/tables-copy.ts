import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface TablesCopy {
  readonly path: string;
  /** Deletes the copy. */
  remove(): void;
}

/**
 * A copy, in a temporary folder, of tables that may not be written where they are, with what stands beside them in
 * SQLite's log. SQLite can't read a library where it may not make its own files beside it. Throws the system's fault.
 */
export function tablesCopy(tables: string): TablesCopy {
  const folder = mkdtempSync(join(tmpdir(), 'evenhand-read-'));
  const remove = () => rmSync(folder, { recursive: true, force: true });
  try {
    const path = join(folder, 'takes.sqlite');
    for (const end of ['', '-wal']) if (existsSync(tables + end)) copyFileSync(tables + end, path + end);
    return { path, remove };
  } catch (error) {
    remove();
    throw error;
  }
}
