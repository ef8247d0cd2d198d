import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { type AddressInfo, createServer } from 'node:net';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { repository, runProgram } from './built-program.ts';

const program = join(repository, 'dist/main.js');

describe('serve', () => {
  it('serves the page until it is interrupted, and says where', async () => {
    const library = join(temporaryFolder(), 'takes');
    const child = spawn(process.execPath, [program, 'serve', '--port', '0', '--library', library]);
    try {
      const [first] = (await once(child.stdout, 'data')) as [Buffer];
      const address = /^The page is at (http:\/\/127\.0\.0\.1:\d+\/)\n$/.exec(first.toString())![1]!;
      const response = await fetch(address);
      expect(await response.text()).toContain('<title>Evenhand</title>');
      expect(await (await fetch(`${address}home.json`)).json()).toEqual({ library: { folder: library } });
    } finally {
      child.kill('SIGINT');
    }
    expect(await once(child, 'exit')).toEqual([0, null]);
  });

  it('says in one sentence that a port is taken', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await once(other, 'listening');
    const { port } = other.address() as AddressInfo;
    const { status, stderr, stdout } = await new Promise<{
      status: number | null;
      stderr: string;
      stdout: string;
    }>((resolve) => {
      const child = spawn(process.execPath, [program, 'serve', '--in-browser', '--port', `${port}`]);
      let stderr = '';
      let stdout = '';
      child.stderr.on('data', (part) => {
        stderr += part;
      });
      child.stdout.on('data', (part) => {
        stdout += part;
      });
      child.on('close', (status) => resolve({ status, stderr, stdout }));
    });
    other.close();
    expect([status, stdout]).toEqual([1, '']);
    expect(stderr).toBe(
      `Port ${port} is taken by another program. Stop that program, or choose another port: evenhand serve --port ${port + 1}\n`,
    );
  });

  it.each(['x', '-1', '70000', '80.5', ''])('does not take %j for a port', (port) => {
    const { status, stderr } = runProgram(['serve', `--port=${port}`]);
    expect(status).toBe(2);
    expect(stderr).toContain('is no port');
  });

  it('gives examples that it understands', () => {
    const { stdout } = runProgram(['serve', '--help']);
    const examples = [...stdout.matchAll(/^ {2}evenhand (serve.*)$/gm)].map(([, line]) => line!.split(' '));
    expect(examples.length).toBeGreaterThan(1);
    // Each runs until it is stopped; one that can't be understood ends with 2 at once.
    for (const args of examples) {
      const { status, signal } = spawnSync(process.execPath, [program, ...args], {
        timeout: 2500,
        env: { ...process.env, XDG_DATA_HOME: temporaryFolder() },
      });
      expect([status, signal], args.join(' ')).toEqual([0, null]);
    }
  });
});
