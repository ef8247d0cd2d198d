import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

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
