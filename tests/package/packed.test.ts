import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { memoryBytes } from '../../src/formats/memory-bytes.ts';
import { openSound } from '../../src/formats/open-sound.ts';
import { mp3Of } from '../../src/formats/write-mp3.ts';

const root = join(import.meta.dirname, '../..');
const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
  readonly version: string;
  readonly dependencies: Readonly<Record<string, string>>;
};
let folder: string;
let files: string[];
let program: string;

/** The archive unpacked into an empty project, with the packages that it asks for and no others. */
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'evenhand-packed-'));
  const pack = ['pack', '--ignore-scripts', '--json', '--pack-destination', folder];
  const [archive] = JSON.parse(execFileSync('npm', pack, { cwd: root, encoding: 'utf8' })) as {
    filename: string;
    files: { path: string }[];
  }[];
  files = archive!.files.map(({ path }) => path);
  const modules = join(folder, 'node_modules');
  mkdirSync(join(modules, 'evenhand'), { recursive: true });
  execFileSync('tar', [
    '-xzf',
    join(folder, archive!.filename),
    '-C',
    join(modules, 'evenhand'),
    '--strip-components=1',
  ]);
  for (const name of Object.keys(manifest.dependencies)) {
    mkdirSync(dirname(join(modules, name)), { recursive: true });
    symlinkSync(join(root, 'node_modules', name), join(modules, name));
  }
  program = join(modules, 'evenhand/dist/main.js');
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (args: readonly string[], options = {}) =>
  spawnSync(process.execPath, [program, ...args], { cwd: folder, encoding: 'utf8', ...options });
const demo = (name: string) => join(folder, 'node_modules/evenhand/fixtures/takes', name);
const take = () => ['grade', demo('demo.wav'), '--sheet', demo('demo.sheet')];

describe('the archive that is published', () => {
  it('holds the program, the page, the demo and the papers, and nothing else', () => {
    const allowed =
      /^(dist\/|fixtures\/takes\/(demo\.(wav|sheet)|README\.md)$|(README\.md|LICENSE|package\.json)$)/;
    expect(files.filter((path) => !allowed.test(path))).toEqual([]);
    for (const path of ['dist/main.js', 'dist/page/index.html', 'fixtures/takes/demo.wav', 'LICENSE'])
      expect(files).toContain(path);
  });

  it('grades the demo with the packages that it asks for and no others, without a picture library', () => {
    expect(run(['--version']).stdout.trim()).toBe(manifest.version);
    const { status, stdout, stderr } = run([...take(), '--json', 'demo.json', '--report', 'demo.html']);
    expect([status, stderr]).toEqual([0, expect.stringContaining('Report written')]);
    expect(stdout).toContain('Overall');
    const result = JSON.parse(readFileSync(join(folder, 'demo.json'), 'utf8')) as {
      strokes: { time: number[] };
    };
    const sample = JSON.parse(readFileSync(join(root, 'reports/samples/demo.json'), 'utf8')) as typeof result;
    expect(result.strokes.time).toEqual(sample.strokes.time);
  });

  it('reads an MP3 file with a decoder of its own', async () => {
    const wave = memoryBytes(readFileSync(demo('demo.wav')));
    const opened = await openSound(wave, {});
    if (!opened.ok) throw new Error(opened.fault.code);
    writeFileSync(join(folder, 'demo.mp3'), await mp3Of(opened.source));
    const { status, stdout, stderr } = run(['grade', 'demo.mp3', '--sheet', demo('demo.sheet')]);
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toContain('Overall');
  });

  it('reads a FLAC file, and says in a sentence that AAC needs a decoder', () => {
    // RFC 9639, D.1: one sample, and no stroke.
    const flac =
      '664c6143800000221000100000000f00000f0ac442f0000000013e84b41807dc690307586a3dad1a2e0ffff869180000bf0358fd03128baa9a';
    writeFileSync(join(folder, 'short.flac'), Buffer.from(flac, 'hex'));
    expect(run(['strokes', 'short.flac'])).toMatchObject({ status: 0, stdout: '' });
    // Three frames of silence as ADTS.
    const aac = 'fff15080021ffc210049900219002380'.repeat(3);
    writeFileSync(join(folder, 'short.aac'), Buffer.from(aac, 'hex'));
    const { status, stderr } = run(['strokes', 'short.aac']);
    expect([status, stderr]).toEqual([3, expect.stringContaining('npm install @audio/decode-aac')]);
  });

  it('asks nothing of any network', () => {
    const watch = `
      import net from 'node:net';
      import dns from 'node:dns';
      import dgram from 'node:dgram';
      const refuse = (what) => () => { process.stderr.write('NETWORK ' + what); process.exit(99); };
      net.Socket.prototype.connect = refuse('connect');
      dns.lookup = refuse('lookup');
      dgram.createSocket = refuse('datagram');
      const inside = globalThis.fetch;
      globalThis.fetch = (to, ...rest) =>
        /^(data|blob):/.test(String(to?.url ?? to)) ? inside(to, ...rest) : refuse('fetch ' + String(to).slice(0, 80))();`;
    const hook = `--import=data:text/javascript,${encodeURIComponent(watch)}`;
    const env = { ...process.env, NODE_OPTIONS: hook };
    const caught = spawnSync(process.execPath, ['-e', "require('node:net').connect(9, '127.0.0.1')"], {
      env,
    });
    expect(caught.status).toBe(99);
    for (const args of [
      [...take(), '--report', 'again.html'],
      ['strokes', demo('demo.wav')],
      ['exercises'],
    ]) {
      const { status, stderr } = run(args, { env });
      expect(stderr).not.toContain('NETWORK');
      expect(status).toBe(0);
    }
  });
});
