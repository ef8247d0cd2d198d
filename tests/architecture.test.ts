import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { describe, expect, it } from 'vitest';
import { architectureFaults, isCode } from './architecture/architecture-faults.ts';
import { findCircle } from './architecture/find-circle.ts';
import { scanImports } from './architecture/scan-imports.ts';
import { importedPath, readSourceTree } from './architecture/source-tree.ts';
import { unusedExports } from './architecture/unused-exports.ts';

/** Files that may be longer than 200 lines, each with the reason. */
const longFiles: Readonly<Record<string, string>> = {
  'core/result/take-result.ts': 'one definition of the whole document',
  'core/measures/handbook.md': 'made from the list of measures',
};

const folder = join(import.meta.dirname, '../src');
const tree = readSourceTree(folder);

describe('the sources', () => {
  it('keep to the directions, lengths and names', () => {
    expect(tree.size).toBeGreaterThan(100);
    expect(architectureFaults(tree, longFiles)).toEqual([]);
  });

  it('export only what another file asks for', () => {
    const outside = ['tests', 'fixtures'].flatMap((name) =>
      [...readSourceTree(join(folder, '..', name))]
        .filter(([path]) => isCode(path))
        .map(([path, source]): [string, string] => [`../${name}/${path}`, source]),
    );
    for (const name of ['build.config.ts', 'vite.config.ts'])
      outside.push([`../${name}`, readFileSync(join(folder, '..', name), 'utf8')]);
    const code = new Map([...tree].filter(([path]) => isCode(path)));
    // Stands in the place of a package, whose names it has.
    code.delete('formats/coded/unused-parser.ts');
    expect(unusedExports(code, new Map(outside))).toEqual([]);
  });

  it('are scanned whole: no import that the bundler follows is missed', async () => {
    const { metafile } = await build({
      entryPoints: [...tree.keys()].filter(isCode).map((path) => join(folder, path)),
      absWorkingDir: folder,
      outdir: 'nowhere',
      write: false,
      bundle: true,
      metafile: true,
      format: 'esm',
      platform: 'node',
      packages: 'external',
      // A style's pictures and type are the page's build's business.
      external: ['*.svg', '*.woff2', '*.png'],
      logLevel: 'silent',
      // What the page's bundler makes of these isn't known here.
      plugins: [
        {
          name: 'asked otherwise',
          setup: (bundler) => bundler.onResolve({ filter: /\?/ }, ({ path }) => ({ path, external: true })),
        },
      ],
    });
    let compared = 0;
    for (const [path, { imports }] of Object.entries(metafile.inputs)) {
      const source = tree.get(path);
      if (source === undefined) continue;
      const scanned = scanImports(source).map((target) =>
        target.startsWith('.') ? importedPath(path, target) : target,
      );
      const followed = imports
        .filter(({ kind }) => kind.startsWith('import') || kind.startsWith('dynamic'))
        .filter(({ path }) => path !== 'preact/jsx-runtime' && !path.includes('?'));
      compared += followed.length;
      expect(scanned, path).toEqual(expect.arrayContaining(followed.map((one) => one.path)));
    }
    expect(compared).toBeGreaterThan(100);
  });
});

describe('unusedExports', () => {
  it('tells names that no import asks for', () => {
    const tree = new Map([
      [
        'a.ts',
        'export const used = 1;\nexport interface Own {}\nexport type Named = 1;\n// export const no = 1;',
      ],
      ['b.ts', "import { used as other } from './a.ts';\nexport function whole() {}"],
      ['c.ts', "const b = await import('./b.ts');"],
    ]);
    const tests = new Map([['../tests/a.ts', "import {\n  type Named,\n} from '../src/a.ts';"]]);
    expect(unusedExports(tree, tests)).toEqual(['a.ts Own']);
    expect(unusedExports(tree, new Map())).toEqual(['a.ts Own', 'a.ts Named']);
  });
});

describe('scanImports', () => {
  it('finds every form of import', () => {
    const source = `
      import a, { type B } from './a.ts';
      import type { C } from "./c.ts";
      import {
        d,
        e, // from './no.ts'
      } from './d.ts';
      import './f.css';
      export { g } from './g.ts';
      export * from './h.ts';
      export type * as I from './i.ts';
      const j = await import('./j.ts');
      import k from './k.json' with { type: 'json' };`;
    const found = ['a.ts', 'c.ts', 'd.ts', 'f.css', 'g.ts', 'h.ts', 'i.ts', 'j.ts', 'k.json'];
    expect(scanImports(source).sort()).toEqual(found.map((file) => `./${file}`));
  });

  it('is not taken in by comments, strings and words', () => {
    const source = `
      // import a from './a.ts';
      /** import b from './b.ts'; */
      const c = 'https://example.org'; // '
      export const from = Array.from('./d.ts');
      export function important(from = './e.ts') {}`;
    expect(scanImports(source)).toEqual([]);
  });
});

describe('architectureFaults', () => {
  const faults = (files: Record<string, string>, long = {}) =>
    architectureFaults(new Map(Object.entries(files)), long);
  const empty = '';

  it('finds nothing wrong with a sound tree', () => {
    const files = {
      'core/signal/source.ts': `import FFT from 'fft.js'; import Type from 'typebox/schema';`,
      'core/onsets/stroke.ts': `import type { S } from '../signal/source.ts';`,
      'core/grade-take.ts': `import './onsets/stroke.ts';`,
      'formats/wav.ts': `import { readSync } from 'node:fs'; import '../core/grade-take.ts';`,
      'cli/grade-command.ts': `const x = import('../formats/wav.ts');`,
      'main.ts': `import { version } from '../package.json'; import './cli/grade-command.ts';`,
    };
    expect(faults(files)).toEqual([]);
  });

  it.each<[string, Record<string, string>]>([
    [
      'upwards',
      { 'core/signal/a.ts': `import type { B } from '../../formats/b.ts';`, 'formats/b.ts': empty },
    ],
    ['sideways', { 'formats/a.ts': `export * from '../charts/b.ts';`, 'charts/b.ts': empty }],
    ['sideways', { 'page/a.tsx': `const b = import('../server/b.ts');`, 'server/b.ts': empty }],
    ['upwards', { 'server/a.ts': `import '../cli/b.ts';`, 'cli/b.ts': empty }],
    ['upwards in core', { 'core/signal/a.ts': `import '../onsets/b.ts';`, 'core/onsets/b.ts': empty }],
    ['upwards in core', { 'core/scoring/a.ts': `import '../grade-take.ts';`, 'core/grade-take.ts': empty }],
    ['node:fs', { 'core/stats/a.ts': `import fs from 'node:fs';` }],
    ['chart.js', { 'core/stats/a.ts': `import 'chart.js';` }],
    ['fft.js-extra', { 'core/stats/a.ts': `import 'fft.js-extra';` }],
    ['Math.random', { 'core/stats/a.ts': 'const x = Math.random();' }],
    ['Date.now', { 'core/stats/a.ts': 'const x = Date.now();' }],
    ["isn't there", { 'formats/a.ts': `import './b.ts';` }],
    ["isn't there", { 'formats/a.ts': `import '../../package.json';` }],
    ['no known folder', { 'helpers/a.ts': empty }],
    ['no known folder of core', { 'core/helpers/a.ts': empty }],
    [
      'a circle of imports: formats/a.ts → formats/b.ts → formats/a.ts',
      { 'formats/a.ts': `import './b.ts';`, 'formats/b.ts': `import type { A } from './a.ts';` },
    ],
    [
      'a circle of imports: signal → stats → signal',
      {
        'core/signal/a.ts': `import '../stats/b.ts';`,
        'core/stats/b.ts': empty,
        'core/stats/c.ts': `import '../signal/d.ts';`,
        'core/signal/d.ts': empty,
      },
    ],
    ['kebab-case', { 'formats/readWav.ts': empty }],
    ['kebab-case', { 'formats/Wave_files/read.ts': empty }],
    ['201 lines', { 'formats/a.ts': '\n'.repeat(201) }],
  ])('finds %s', (found, files) => {
    const sentences = faults(files);
    expect(sentences).toHaveLength(1);
    expect(sentences[0]).toContain(found);
  });

  it('lets a long file be for a reason, and no short one', () => {
    expect(faults({ 'formats/a.ts': '\n'.repeat(201) }, { 'formats/a.ts': 'a table' })).toEqual([]);
    expect(faults({ 'formats/a.ts': empty }, { 'formats/a.ts': 'a table' })).toHaveLength(1);
    expect(faults({}, { 'formats/gone.ts': 'a table' })).toHaveLength(1);
  });
});

it('findCircle follows a graph to a circle, and finds none in a ladder', () => {
  const graph = (edges: Record<string, string[]>) => findCircle(new Map(Object.entries(edges)));
  expect(graph({ a: ['b'], b: ['c', 'd'], c: [], d: ['b'] })).toEqual(['b', 'd', 'b']);
  expect(graph({ a: ['a'] })).toEqual(['a', 'a']);
  expect(graph({ a: ['b', 'c'], b: ['c'], c: [] })).toBeUndefined();
});
