import { join } from 'node:path';
import { defineConfig } from 'vite';
import { contentPolicy } from './src/page/build/content-policy.ts';
import { helpPages } from './src/page/build/help-pages.ts';
import { pageNotices } from './src/page/build/notices.ts';
import { offlineList } from './src/page/build/offline-list.ts';
import { reportParts } from './src/page/build/report-parts.ts';
import { unusedSqliteWorkers } from './src/page/build/unused-sqlite-workers.ts';

const root = import.meta.dirname;

/** Every file that the page and its workers are made of; the report's scripts and its type come along as text. */
const madeOf = new Set(
  ['chart.js', '@kurkle/color', '@fontsource/atkinson-hyperlegible'].map((name) =>
    join(root, 'node_modules', name, 'package.json'),
  ),
);

/** How long parts of the build take is nobody's concern who only builds. */
const checks = { pluginTimings: false };

export default defineConfig({
  root: join(root, 'src/page'),
  base: './',
  publicDir: join(root, 'src/page/public'),
  logLevel: 'warn',
  resolve: { alias: { 'codec-parser': join(root, 'src/formats/coded/unused-parser.ts') } },
  build: {
    outDir: join(root, 'dist/page'),
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 2000,
    rolldownOptions: { checks },
  },
  // An audio worklet's module and the engine load parts of their own when they need them.
  worker: {
    format: 'es',
    rolldownOptions: { checks },
    plugins: () => [
      reportParts(join(root, 'dist')),
      unusedSqliteWorkers(),
      pageNotices(madeOf, { write: false }),
    ],
  },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  // wav-decoder asks for `global.Buffer`, which a browser doesn't have.
  define: { global: 'globalThis' },
  plugins: [
    helpPages(),
    reportParts(join(root, 'dist')),
    contentPolicy(join(root, 'dist')),
    pageNotices(madeOf, { write: true }),
    offlineList(),
  ],
});
