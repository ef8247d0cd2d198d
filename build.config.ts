import { chmodSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, type Plugin } from 'esbuild';
import { build as buildPage } from 'vite';
import { gradingDigest } from './src/page/build/grading-digest.ts';
import { noticesFile, noticesOf } from './src/page/build/notices.ts';

const root = import.meta.dirname;
const reportScripts = {
  'report-client': 'main.ts',
  'report-listening': 'listening-main.ts',
  'report-files': 'downloads-main.ts',
  'report-weeks': 'weeks-main.ts',
};
const program = join(root, 'dist/main.js');

/**
 * The drawing library asks for a package named `canvas`, which is another one than we draw with: an installed program can't
 * rename packages, so the library stands in the program and is given ours.
 */
const canvasName = '@napi-rs/canvas';
const ownCanvas: Plugin = {
  name: 'own-canvas',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /freshRequire$/ }, ({ path }) => ({ path, namespace: 'own-canvas' }));
    onLoad({ filter: /./, namespace: 'own-canvas' }, () => ({
      contents: `exports.freshRequire = () => require('${canvasName}');`,
      resolveDir: root,
    }));
  },
};

rmSync(join(root, 'dist'), { recursive: true, force: true });

const define = { gradingDigest: JSON.stringify(await gradingDigest(root)) };
const builds = [];

builds.push(
  await build({
    entryPoints: {
      main: join(root, 'src/main.ts'),
      'take-worker': join(root, 'src/cli/folder/take-worker.ts'),
    },
    outdir: join(root, 'dist'),
    bundle: true,
    platform: 'node',
    target: 'node20',
    format: 'esm',
    packages: 'external',
    // What every command loads stands in the program itself: finding and reading a package's files costs a twentieth of a second.
    alias: {
      ...Object.fromEntries(
        Object.entries({
          'chartjs-node-canvas': 'chartjs-node-canvas/dist/chartJSNodeCanvas.js',
          commander: 'commander',
          meyda: 'meyda',
          'wav-decoder': 'wav-decoder',
        }).map(([name, file]) => [name, createRequire(import.meta.url).resolve(file)]),
      ),
      // So do the decoders that bring along a parser under another licence, without it, and what they need.
      ...Object.fromEntries(
        [
          'mediabunny',
          '@wasm-audio-decoders/flac',
          '@wasm-audio-decoders/ogg-vorbis',
          '@wasm-audio-decoders/common',
          '@eshaz/web-worker',
          'simple-yenc',
        ].map((name) => [name, fileURLToPath(import.meta.resolve(name))]),
      ),
      'codec-parser': join(root, 'src/formats/coded/unused-parser.ts'),
    },
    plugins: [ownCanvas],
    define: { ...define, canvasInProgram: JSON.stringify(canvasName) },
    banner: {
      js: "import { createRequire as requireFrom } from 'node:module';const require = requireFrom(import.meta.url);",
    },
    splitting: true,
    // Beside main.js, so that `new URL('./report-client.js', import.meta.url)` holds in every part.
    chunkNames: '[name]-[hash]',
    sourcemap: true,
    metafile: true,
    logLevel: 'warning',
  }),
);
chmodSync(program, 0o755);

for (const [name, entry] of Object.entries(reportScripts)) {
  builds.push(
    await build({
      entryPoints: [join(root, 'src/report/client', entry)],
      outfile: join(root, `dist/${name}.js`),
      bundle: true,
      platform: 'browser',
      target: 'es2022',
      format: 'iife',
      minify: true,
      legalComments: 'inline',
      // wav-decoder asks for `global.Buffer`, which a browser doesn't have.
      define: { global: 'globalThis' },
      metafile: true,
      logLevel: 'warning',
    }),
  );
}
const madeOf = builds.flatMap(({ metafile }) => Object.keys(metafile.inputs));
writeFileSync(join(root, 'dist', noticesFile), noticesOf(madeOf.map((path) => join(root, path))));

// After the scripts of the report, which the page carries along.
await buildPage({ configFile: join(root, 'vite.config.ts'), define });
