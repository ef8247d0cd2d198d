import { spawnSync } from 'node:child_process';
import { describe, it } from 'vitest';
import { programPath } from './programs.ts';

/**
 * A `describe` for checks made with a module of Python. Without it the checks count as skipped under a name that says
 * so, or as failed where `EVENHAND_REQUIRE_PYTHON3=1` is set. `run` gives a script its input and its output back.
 */
export function describePython(
  module: string,
  title: string,
  body: (run: (script: string, input: string) => string) => void,
): void {
  const python = programPath('python3');
  const there = python !== undefined && spawnSync(python, ['-c', `import ${module}`]).status === 0;
  if (there) {
    const run = (script: string, input: string): string => {
      const { status, stdout, stderr } = spawnSync(python, ['-c', script], { input, encoding: 'utf8' });
      if (status !== 0) throw new Error(stderr);
      return stdout;
    };
    describe(title, () => body(run));
    return;
  }
  const reason = `NOT CHECKED, the Python module ${module} is not installed: ${title}`;
  const required = process.env.EVENHAND_REQUIRE_PYTHON3 === '1';
  if (!required) console.warn(reason);
  describe(title, () => {
    it.skipIf(!required)(reason, () => {
      throw new Error(reason);
    });
  });
}
