import { spawnSync } from 'node:child_process';

/**
 * Runs a script in a process of its own, whose stack is a quarter of that of the threads that tests run in, as wide as a
 * user's; what it printed, and what went wrong. `import` takes addresses of files.
 */
export function onPlainStack(script: string): { readonly stdout: string; readonly stderr: string } {
  const args = ['--import', 'tsx', '--input-type=module', '-e', script];
  return spawnSync(process.execPath, args, { encoding: 'utf8' });
}
