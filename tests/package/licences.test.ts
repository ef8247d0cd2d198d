import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');
const read = (...path: string[]) => readFileSync(join(root, ...path), 'utf8');

interface Locked {
  readonly version?: string;
  readonly integrity?: string;
  readonly resolved?: string;
  readonly os?: readonly string[];
  readonly cpu?: readonly string[];
  readonly optional?: boolean;
  readonly hasInstallScript?: boolean;
  readonly license?: string;
  readonly dev?: boolean;
  readonly link?: boolean;
  /** What npm was told of it when the file was written. */
  readonly deprecated?: string;
}
const lock = JSON.parse(read('package-lock.json')) as { readonly packages: Readonly<Record<string, Locked>> };
const manifest = JSON.parse(read('package.json')) as Readonly<
  Record<'dependencies' | 'devDependencies' | 'optionalDependencies', Readonly<Record<string, string>>>
>;

/** Licences whose terms a program under the MIT licence can meet by carrying their notices along. */
const compatible = [
  'MIT',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'Apache-2.0',
  '0BSD',
  'OFL-1.1',
  'MPL-2.0',
  'CC0-1.0',
  '(BSD-2-Clause OR MIT OR Apache-2.0)',
  '(MIT OR WTFPL)',
];
const shipped = Object.entries(lock.packages).filter(([path, { dev, link }]) => path !== '' && !dev && !link);

describe('what an installed program brings along', () => {
  it.each(shipped)('%s has a licence that goes with MIT', (path, { license }) => {
    expect(compatible, path).toContain(license);
  });
});

describe('the lock file', () => {
  const packages = Object.entries(lock.packages).filter(([path, { link }]) => path !== '' && !link);
  /** A package made for one platform, without the platform in its name; musl's and other names of one platform are one. */
  const family = (path: string) =>
    path.replace(/^.*node_modules\//, '').replace(/-(linux|darwin|win32|freebsd|android)\b.*$/, '');

  it('knows each package by its contents, and takes none from elsewhere than a registry', () => {
    for (const [path, { integrity, resolved }] of packages) {
      expect(integrity, path).toMatch(/^sha512-/);
      if (resolved !== undefined) expect(resolved, path).toMatch(/^https:\/\/registry\./);
    }
  });

  it('has what Linux, macOS and Windows need, on both kinds of processor', () => {
    const made = new Map<string, Set<string>>();
    for (const [path, { os, cpu, optional }] of packages)
      for (const system of os ?? [])
        for (const processor of cpu ?? []) {
          expect(optional, path).toBe(true);
          const name = family(path);
          made.set(name, (made.get(name) ?? new Set()).add(`${system}-${processor}`));
        }
    const several = [...made].filter(([, platforms]) => platforms.size > 1);
    expect(several.length).toBeGreaterThan(3);
    for (const [name, platforms] of several)
      for (const system of ['linux', 'darwin', 'win32'])
        for (const processor of ['x64', 'arm64'])
          expect([...platforms], name).toContain(`${system}-${processor}`);
  });

  it('has none that its makers gave up', () => {
    expect(packages.filter(([, { deprecated }]) => deprecated !== undefined)).toEqual([]);
  });

  it('lets no package run a program of its own at installation but those that build SQLite and start tools', () => {
    const running = packages
      .filter(([, { hasInstallScript }]) => hasInstallScript)
      .map(([path]) => family(path));
    expect(running.toSorted()).toEqual(['better-sqlite3', 'esbuild']);
  });
});

describe('DEVELOPERS.md', () => {
  const table = read('DEVELOPERS.md').split('## Dependencies')[1] ?? '';
  const direct = Object.values(manifest).length > 0 && [
    ...Object.keys(manifest.dependencies),
    ...Object.keys(manifest.devDependencies),
    ...Object.keys(manifest.optionalDependencies),
  ];
  it.each(direct || [])('gives the reason for %s', (name) => {
    const base = name.startsWith('@types/') ? name.slice('@types/'.length) : name;
    const row = table.split('\n').find((line) => line.startsWith('|') && line.split('|')[1]!.includes(base));
    expect(row, name).toBeDefined();
    const { license = '' } = lock.packages[`node_modules/${name}`]!;
    const plain = (text: string) => text.replaceAll(/[- ]/g, '').toLowerCase();
    const told = plain(row!.split('|')[2]!);
    const choices = license.split(' OR ').map((one) => plain(one).replace(/only$/, ''));
    expect(
      choices.some((one) => told.includes(one)),
      `"${license}" of ${name} in "${told}"`,
    ).toBe(true);
  });
});
