import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { repository } from '../cli/built-program.ts';

const folder = mkdtempSync(join(tmpdir(), 'evenhand-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const writer = join(folder, 'writer.mjs');
const bytes = 30_000_000;

/** Writes a large file over and over by writeAtomically, then works on without a pause until it is killed. */
beforeAll(async () => {
  await build({
    stdin: {
      contents: `
        import { signalsTold } from './src/formats/whole-before-signal.ts';
        import { writeAtomically } from './src/formats/write-atomically.ts';
        const contents = new Uint8Array(${bytes}).fill(65);
        process.stdout.write('ready\\n');
        writeAtomically(process.argv[2], contents);
        await signalsTold();
        process.stdout.write('written\\n');
        for (;;) Math.sqrt(2);
      `,
      resolveDir: repository,
    },
    outfile: writer,
    bundle: true,
    platform: 'node',
    format: 'esm',
  });
});

async function killed(signal: NodeJS.Signals, afterMs: number, from: string, name: string) {
  const path = join(folder, name);
  const child = spawn(process.execPath, [writer, path], { stdio: ['ignore', 'pipe', 'inherit'] });
  const ended = new Promise<NodeJS.Signals | null>((resolve) => child.on('exit', (_, by) => resolve(by)));
  await new Promise<void>((resolve) =>
    child.stdout.on('data', (text: Buffer) => {
      if (String(text).includes(from)) resolve();
    }),
  );
  await wait(afterMs);
  child.kill(signal);
  const slow = setTimeout(() => child.kill('SIGKILL'), 12_000);
  return ended.finally(() => clearTimeout(slow));
}

describe('a signal while a file is written', () => {
  it.each([0, 3, 10, 20, 40, 80, 200])(
    '%i ms after the start leaves the whole file or none',
    { timeout: 30_000 },
    async (ms) => {
      for (const signal of ['SIGINT', 'SIGTERM'] as const) {
        const name = `${signal}-${ms}.bin`;
        expect(await killed(signal, ms, 'ready', name)).toBe(signal);
        const left = readdirSync(folder).filter((file) => file !== 'writer.mjs');
        expect(left.filter((file) => file.endsWith('.tmp'))).toEqual([]);
        if (left.includes(name)) expect(readFileSync(join(folder, name))).toHaveLength(bytes);
      }
    },
  );

  it('ends a busy program at once when nothing is written', { timeout: 30_000 }, async () => {
    const from = performance.now();
    expect(await killed('SIGINT', 50, 'written', 'busy.bin')).toBe('SIGINT');
    expect(performance.now() - from).toBeLessThan(20_000);
  });
});
