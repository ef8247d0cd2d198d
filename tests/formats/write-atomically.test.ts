import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { outputFault, writeAtomically } from '../../src/formats/write-atomically.ts';
import { runAsOrdinaryUser } from './run-as-ordinary-user.ts';
import { temporaryFolder } from './temporary-folder.ts';

describe('writeAtomically', () => {
  it('writes text and bytes and leaves nothing beside them', () => {
    const folder = temporaryFolder();
    expect(writeAtomically(join(folder, 'a.txt'), 'Übung')).toBeUndefined();
    expect(writeAtomically(join(folder, 'b.bin'), Uint8Array.of(0, 255))).toBeUndefined();
    expect(readFileSync(join(folder, 'a.txt'), 'utf8')).toBe('Übung');
    expect([...readFileSync(join(folder, 'b.bin'))]).toEqual([0, 255]);
    expect(readdirSync(folder).sort()).toEqual(['a.txt', 'b.bin']);
  });

  it('replaces what is there and keeps its permissions', () => {
    const path = join(temporaryFolder(), 'report.html');
    writeFileSync(path, 'old');
    chmodSync(path, 0o600);
    const before = statSync(path).ino;
    writeAtomically(path, 'new');
    expect(readFileSync(path, 'utf8')).toBe('new');
    expect(statSync(path).ino).not.toBe(before);
    expect(statSync(path).mode & 0o777).toBe(0o600);
  });

  it('writes to what a symbolic link points at', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'target'), 'old');
    symlinkSync('target', join(folder, 'link'));
    writeAtomically(join(folder, 'link'), 'new');
    expect(lstatSync(join(folder, 'link')).isSymbolicLink()).toBe(true);
    expect(readFileSync(join(folder, 'target'), 'utf8')).toBe('new');
  });

  it('leaves a device what it is', () => {
    expect(writeAtomically('/dev/null', 'gone')).toBeUndefined();
    expect(statSync('/dev/null').isCharacterDevice()).toBe(true);
  });

  it('leaves nothing, and what was there as it was, when the disk takes no more', () => {
    const path = join(temporaryFolder(), 'report.html');
    writeFileSync(path, 'old');
    const module = join(import.meta.dirname, '../../src/formats/write-atomically.ts');
    const script = `
      import { writeAtomically } from ${JSON.stringify(module)};
      console.log(JSON.stringify(writeAtomically(${JSON.stringify(path)}, new Uint8Array(100_000))));`;
    // The shell lets no file grow beyond some kilobytes. Compiled modules must not be kept on that disk either.
    const command = 'ulimit -f 16; TSX_DISABLE_CACHE=1 "$0" --import tsx --input-type=module -e "$1"';
    const told = execFileSync('bash', ['-c', command, process.execPath, script], { encoding: 'utf8' });
    expect(JSON.parse(told)).toMatchObject({
      code: 'write-failed',
      facts: { reason: expect.stringContaining('EFBIG') },
    });
    expect(readdirSync(dirname(path))).toEqual(['report.html']);
    expect(readFileSync(path, 'utf8')).toBe('old');
  });

  it('takes the longest names and says when one is too long', () => {
    const folder = temporaryFolder();
    expect(writeAtomically(join(folder, 'n'.repeat(255)), 'x')).toBeUndefined();
    expect(writeAtomically(join(folder, 'n'.repeat(256)), 'x')).toMatchObject({ code: 'write-failed' });
    expect(readdirSync(folder)).toEqual(['n'.repeat(255)]);
  });
});

describe('outputFault', () => {
  it('finds nothing wrong with a new or a present file in a folder', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'present'), '');
    expect(outputFault(join(folder, 'present'))).toBeUndefined();
    expect(outputFault(join(folder, 'new'))).toBeUndefined();
    expect(readdirSync(folder)).toEqual(['present']);
  });

  it('names what is in the way', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'file'), '');
    const missing = join(folder, 'no', 'such');
    expect(outputFault(join(missing, 'report.html'))).toEqual({
      code: 'folder-missing',
      facts: { folder: missing },
    });
    expect(outputFault(join(folder, 'file', 'x'))).toEqual({
      code: 'not-a-folder',
      facts: { folder: join(folder, 'file') },
    });
    expect(outputFault(folder)).toEqual({ code: 'output-is-a-folder', facts: {} });
  });

  it('says that a folder may not be written into', () => {
    const folder = temporaryFolder();
    chmodSync(folder, 0o755);
    const closed = join(folder, 'closed');
    mkdirSync(closed, { mode: 0o555 });
    const fault = { code: 'folder-not-writable', facts: { folder: closed } };
    expect(runAsOrdinaryUser('write-atomically.ts', 'outputFault', join(closed, 'report.html'))).toEqual(
      fault,
    );
  });
});
