import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, it } from 'vitest';

const repository = resolve(import.meta.dirname, '..');

/**
 * The folder of reference data that comes from others and isn't part of the repository: the one
 * `EVENHAND_OUTSIDE` names, else `../shared/outside` seen from the repository. Undefined where there is none.
 */
export function outsideFolder(): string | undefined {
  const folder = resolve(repository, process.env.EVENHAND_OUTSIDE || '../shared/outside');
  return existsSync(folder) ? folder : undefined;
}

/**
 * A `describe` for checks against reference data. `files` are paths inside the folder that the checks read. Where
 * one is missing the checks count as skipped under a name that says so, or as failed where
 * `EVENHAND_REQUIRE_OUTSIDE=1` is set.
 *
 * @example
 * describeOutside('certified values', ['nist/Lottery.dat'], (folder) => {
 *   it('agrees', () => expect(mean(readLottery(folder))).toBeCloseTo(518.958715596330, 9));
 * });
 */
export function describeOutside(
  title: string,
  files: readonly string[],
  body: (folder: string) => void,
): void {
  const folder = outsideFolder();
  const missing =
    folder === undefined
      ? 'the folder of reference data'
      : files.find((file) => !existsSync(join(folder, file)));
  if (folder !== undefined && missing === undefined) {
    describe(title, () => body(folder));
    return;
  }
  const reason = `NOT CHECKED, ${missing} is missing: ${title}`;
  const required = process.env.EVENHAND_REQUIRE_OUTSIDE === '1';
  if (!required) console.warn(reason);
  describe(title, () => {
    it.skipIf(!required)(reason, () => {
      throw new Error(reason);
    });
  });
}
