import { execFileSync, spawnSync } from 'node:child_process';
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { memoryBytes } from '../../src/formats/memory-bytes.ts';
import { openSound } from '../../src/formats/open-sound.ts';
import { mp3Of } from '../../src/formats/write-mp3.ts';
import { describeMounted, ownNetwork } from '../faults/own-mounts.ts';

const root = join(import.meta.dirname, '../..');
const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
  readonly version: string;
  readonly dependencies: Readonly<Record<string, string>>;
};
let folder: string;
let files: string[];
let program: string;
let archivePath: string;

/** The archive unpacked into an empty project, with the packages that it asks for and no others. */
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'evenhand-packed-'));
  const pack = ['pack', '--ignore-scripts', '--json', '--pack-destination', folder];
  const [archive] = JSON.parse(execFileSync('npm', pack, { cwd: root, encoding: 'utf8' })) as {
    filename: string;
    files: { path: string }[];
  }[];
  files = archive!.files.map(({ path }) => path);
  archivePath = join(folder, archive!.filename);
  const modules = join(folder, 'node_modules');
  mkdirSync(join(modules, 'evenhand'), { recursive: true });
  execFileSync('tar', ['-xzf', archivePath, '-C', join(modules, 'evenhand'), '--strip-components=1']);
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

  it('carries the notices of all packages that stand in its files', () => {
    const built = join(root, 'dist');
    const notices = readFileSync(join(built, 'notices.txt'), 'utf8');
    const standing = new Set<string>();
    for (const name of readdirSync(built).filter((name) => name.endsWith('.js.map')))
      for (const source of JSON.parse(readFileSync(join(built, name), 'utf8')).sources as string[]) {
        const [, of] = /.*node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(source) ?? [];
        if (of !== undefined) standing.add(of);
      }
    expect(standing.size).toBeGreaterThan(5);
    for (const name of standing) expect(notices, name).toMatch(new RegExp(`^${name} \\d`, 'm'));
    const page = readFileSync(join(built, 'page/notices.txt'), 'utf8');
    for (const name of ['preact', 'kysely', 'chart.js', 'mediabunny', '@sqlite.org/sqlite-wasm'])
      expect(page).toMatch(new RegExp(`^${name} \\d`, 'm'));
    const told = `${notices}${page}`.matchAll(/^(?:@[^ /]+\/)?[a-z][^ /]* \d[^ ]*, (.+)$/gm);
    const licences = new Set([...told].map(([, licence]) => licence));
    expect([...licences].toSorted()).toEqual(['Apache-2.0', 'ISC', 'MIT', 'MPL-2.0', 'OFL-1.1']);
    expect(files).toEqual(expect.arrayContaining(['dist/notices.txt', 'dist/page/notices.txt']));
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

  // npm needs what it asks a registry for in its store; where that is missing, the registry is asked only where this is required.
  it('is installed by npm into an empty project and grades there', ({ skip }) => {
    const required = process.env.EVENHAND_REQUIRE_INSTALL === '1';
    const project = join(folder, 'project');
    mkdirSync(project);
    writeFileSync(join(project, 'package.json'), '{ "private": true }');
    const install = ['install', required ? '--prefer-offline' : '--offline', '--omit=optional', '--no-audit'];
    const installed = spawnSync('npm', [...install, '--ignore-scripts', archivePath], {
      cwd: project,
      encoding: 'utf8',
    });
    if (!required && installed.stderr.includes('ENOTCACHED')) {
      console.warn(
        'NOT CHECKED, npm has not all packages in its store: the program installed from its archive',
      );
      skip();
    }
    expect([installed.status, installed.stderr]).toEqual([0, '']);
    const { status, stdout, stderr } = spawnSync(
      join(project, 'node_modules/.bin/evenhand'),
      ['grade', demo('demo.wav'), '--sheet', demo('demo.sheet'), '--report', 'demo.html'],
      { cwd: project, encoding: 'utf8' },
    );
    expect([status, stderr]).toEqual([0, expect.stringContaining('Report written')]);
    expect(stdout).toContain('Overall');
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

describeMounted('the archive that is published, where there is no network at all', () => {
  it('does the same', () => {
    const alone = (command: string, ...args: string[]) =>
      spawnSync('unshare', [...ownNetwork, command, ...args], { cwd: folder, encoding: 'utf8' });
    const ask =
      "require('node:net').connect(9, '127.0.0.1').on('error', ({ code }) => process.exit(code === 'ENETUNREACH' ? 7 : 8))";
    expect(alone(process.execPath, '-e', ask).status).toBe(7);
    const { status, stdout } = alone(process.execPath, program, ...take());
    expect([status, stdout]).toEqual([0, run(take()).stdout]);
  });
});
