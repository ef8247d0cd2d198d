import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const program = join(import.meta.dirname, '../dist/main.js');
const { version } = JSON.parse(readFileSync(join(import.meta.dirname, '../package.json'), 'utf8'));
const run = (...args: string[]) => spawnSync(program, args, { encoding: 'utf8' });

describe('the built program', () => {
  it('is there', () => {
    expect(existsSync(program), 'dist/main.js is missing: run `npm run build` first').toBe(true);
  });

  it('can be run by its name', () => {
    expect(statSync(program).mode & 0o111).toBe(0o111);
    expect(run('--version')).toMatchObject({ status: 0, stdout: `${version}\n`, stderr: '' });
  });

  it('ends with 2 for a command line that it cannot understand', () => {
    expect(run('no-such-command')).toMatchObject({ status: 2, stdout: '' });
  });

  it('keeps silent when its reader has gone', () => {
    // biome-ignore lint/suspicious/noTemplateCurlyInString: the shell's, not ours
    const shell = '"$0" exercises | true; exit "${PIPESTATUS[0]}"';
    const { status, stderr } = spawnSync('bash', ['-c', shell, program], { encoding: 'utf8' });
    expect(stderr).not.toMatch(/EPIPE|Error/);
    expect(status).toBe(0);
  });
});
