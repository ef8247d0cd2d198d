import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');
const read = (...path: string[]) => readFileSync(join(root, ...path), 'utf8');

interface Locked {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly link?: boolean;
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

describe('DEVELOPERS.md', () => {
  const table = read('DEVELOPERS.md').split('## Dependencies')[1] ?? '';
  const direct = Object.values(manifest).length > 0 && [
    ...Object.keys(manifest.dependencies),
    ...Object.keys(manifest.devDependencies),
    ...Object.keys(manifest.optionalDependencies),
  ];
  it.each(direct || [])('gives the reason for %s', (name) => {
    const base = name.startsWith('@types/') ? name.slice('@types/'.length) : name;
    expect(table).toContain(base);
  });
});
