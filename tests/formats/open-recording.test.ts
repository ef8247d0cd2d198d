import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { chmodSync, existsSync, mkdirSync, readdirSync, readlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type OpenRecording, openRecording } from '../../src/formats/open-recording.ts';
import { writeWav } from '../../src/formats/write-wav.ts';
import { runAsOrdinaryUser } from './run-as-ordinary-user.ts';
import { temporaryFolder } from './temporary-folder.ts';

const take = writeWav({
  channels: [Float32Array.from({ length: 5000 }, (_, i) => (i % 100) / 128)],
  sampleRate: 44100,
  depth: 'int16',
});

async function opened(path: string): Promise<OpenRecording> {
  const outcome = await openRecording(path);
  if (!outcome.ok) throw new Error(outcome.fault.code);
  return outcome;
}

describe('openRecording', () => {
  it('opens a file, reads it as it is asked for and knows its SHA-256', async () => {
    const path = join(temporaryFolder(), 'take.wav');
    writeFileSync(path, take);
    const recording = await opened(path);
    expect(recording).toMatchObject({
      name: 'take.wav',
      notes: [],
      source: { sampleRate: 44100, channels: 1, length: 5000 },
    });
    expect([...recording.source.read(0, 98, 102)]).toEqual([98 / 128, 99 / 128, 0, 1 / 128]);
    expect(recording.sha256()).toBe(createHash('sha256').update(take).digest('hex'));
    recording.close();
    recording.close();
  });

  it.runIf(existsSync('/proc/self/fd'))('leaves no file open', async () => {
    const folder = temporaryFolder();
    const open = () => readdirSync('/proc/self/fd').filter((entry) => linkOf(entry).startsWith(folder));
    writeFileSync(join(folder, 'take.wav'), take);
    writeFileSync(join(folder, 'text.wav'), 'hello');
    const recording = await opened(join(folder, 'take.wav'));
    expect(open()).toHaveLength(1);
    recording.close();
    await openRecording(join(folder, 'text.wav'));
    await openRecording(folder);
    expect(open()).toEqual([]);
  });

  it.each<[string, (folder: string) => string]>([
    ['file-missing', (folder) => join(folder, 'none.wav')],
    ['file-missing', (folder) => join(written(folder, take), 'inside.wav')],
    ['is-a-folder', (folder) => folder],
    ['empty-file', (folder) => written(folder, new Uint8Array(0))],
    ['not-a-recording', (folder) => written(folder, new TextEncoder().encode('GIF89a'))],
    ['coded-unreadable', (folder) => written(folder, new TextEncoder().encode('fLaC'))],
    ['format-cut-short', (folder) => written(folder, take.subarray(0, 20))],
    ['read-failed', (folder) => join(folder, 'n'.repeat(5000))],
  ])('says %s', async (code, path) => {
    expect(await openRecording(path(temporaryFolder()))).toMatchObject({ ok: false, fault: { code } });
  });

  it('says that a file may not be read', () => {
    const folder = temporaryFolder();
    chmodSync(folder, 0o755);
    const path = written(folder, take);
    chmodSync(path, 0);
    expect(runAsOrdinaryUser('open-recording.ts', 'openRecording', path)).toMatchObject({
      ok: false,
      fault: { code: 'not-permitted' },
    });
  });
});

describe('openRecording of standard input', () => {
  const module = join(import.meta.dirname, '../../src/formats/open-recording.ts');
  const script = `
    import { openRecording } from ${JSON.stringify(module)};
    const { ok, name, fault, source, sha256 } = await openRecording('-');
    console.log(JSON.stringify({ ok, name, code: fault?.code, length: source?.length, sha256: sha256?.() }));`;
  const piped = (command: string) =>
    JSON.parse(
      execFileSync(
        'bash',
        ['-c', `${command} | "$0" --import tsx --input-type=module -e "$1"`, process.execPath, script],
        { encoding: 'utf8' },
      ),
    );

  it('reads a pipe to its end, though it comes in pieces', () => {
    const path = written(temporaryFolder(), take);
    const sha256 = createHash('sha256').update(take).digest('hex');
    const inPieces = `(head -c 30 ${path}; sleep 0.2; tail -c +31 ${path})`;
    expect(piped(inPieces)).toEqual({ ok: true, name: 'standard input', length: 5000, sha256 });
  });

  it('says that nothing came, and does not read an endless pipe of something else', () => {
    expect(piped('true')).toMatchObject({ ok: false, code: 'empty-file' });
    expect(piped('yes')).toMatchObject({ ok: false, code: 'not-a-recording' });
  });
});

function written(folder: string, contents: Uint8Array): string {
  mkdirSync(folder, { recursive: true });
  const path = join(folder, 'take.wav');
  writeFileSync(path, contents);
  return path;
}

function linkOf(descriptor: string): string {
  try {
    return readlinkSync(join('/proc/self/fd', descriptor));
  } catch {
    return ''; // closed since the folder was listed
  }
}
