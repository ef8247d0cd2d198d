import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import { describe, it } from 'vitest';

/** Where a program of this name stands on the search path, or undefined. */
export function programPath(name: string): string | undefined {
  const candidates = (process.env.PATH ?? '').split(delimiter).map((folder) => join(folder, name));
  return candidates.find((path) => {
    try {
      accessSync(path, constants.X_OK);
      return true;
    } catch {
      return false;
    }
  });
}

/**
 * A `describe` for checks made with another program. Without the program the checks count as skipped under a name
 * that says so, or as failed where `EVENHAND_REQUIRE_<PROGRAM>=1` is set.
 */
export function describeProgram(name: string, title: string, body: (path: string) => void): void {
  const path = programPath(name);
  if (path !== undefined) {
    describe(title, () => body(path));
    return;
  }
  const reason = `NOT CHECKED, the program ${name} is not installed: ${title}`;
  const required = process.env[`EVENHAND_REQUIRE_${name.toUpperCase()}`] === '1';
  if (!required) console.warn(reason);
  describe(title, () => {
    it.skipIf(!required)(reason, () => {
      throw new Error(reason);
    });
  });
}
