import { readdirSync, readFileSync } from 'node:fs';
import { join, posix, relative, sep } from 'node:path';

/** Path below src, with slashes → text. */
export type SourceTree = ReadonlyMap<string, string>;

export function readSourceTree(folder: string): SourceTree {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) =>
    entry.isFile(),
  );
  return new Map(
    entries.map((entry) => {
      const path = join(entry.parentPath, entry.name);
      return [relative(folder, path).split(sep).join('/'), readFileSync(path, 'utf8')];
    }),
  );
}

/**
 * The path below src that a relative import leads to; it begins with `../` where it leads out of src. What stands behind
 * a question mark tells the page's bundler what to make of the file.
 */
export const importedPath = (from: string, target: string): string =>
  posix.join(posix.dirname(from), target.replace(/\?.*$/, ''));
