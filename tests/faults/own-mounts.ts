import { type SpawnSyncReturns, spawnSync } from 'node:child_process';
import { describe, it } from 'vitest';

/** A user who isn't root is one inside. */
const asRoot = process.getuid?.() === 0 ? [] : ['--map-root-user'];
/** Mounts are the script's own and go with it. */
const unshare = ['--mount', ...asRoot];
/** Arguments of `unshare` for a program without any network. */
export const ownNetwork = ['--net', ...asRoot];

/** Runs a Bash script that may mount what it likes without anybody else seeing it. */
export function withOwnMounts(script: string, folder: string): SpawnSyncReturns<string> {
  return spawnSync('unshare', [...unshare, 'bash', '--norc', '-euo', 'pipefail', '-c', script], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1' },
  });
}

/**
 * A `describe` for checks on disks of their own. Where none can be mounted they count as skipped under a name that says
 * so, or as failed where `EVENHAND_REQUIRE_MOUNTS=1` is set.
 */
export function describeMounted(title: string, body: () => void): void {
  const { status } = withOwnMounts('mount -t tmpfs -o size=64k none /mnt', '/');
  if (status === 0) {
    describe(title, body);
    return;
  }
  const reason = `NOT CHECKED, no disk can be mounted here: ${title}`;
  const required = process.env.EVENHAND_REQUIRE_MOUNTS === '1';
  if (!required) console.warn(reason);
  describe(title, () => {
    it.skipIf(!required)(reason, () => {
      throw new Error(reason);
    });
  });
}
