import type { Plugin } from 'vite';

/** Where SQLite's package names workers of its own, which the bundler would take along: 250 kB for every page. */
const workers = [
  'new URL("sqlite3-worker1.mjs", import.meta.url)',
  'new URL("sqlite3-opfs-async-proxy.js", import.meta.url)',
] as const;

/** What stands in their places: both are reached only by ways to SQLite that the page doesn't take. */
const instead = '(() => { throw new Error("This worker is no part of the page.") })()';

/**
 * Leaves out of the page the workers that SQLite's package brings and the library doesn't use. Throws where they aren't
 * found.
 */
export function unusedSqliteWorkers(): Plugin {
  return {
    name: 'unused-sqlite-workers',
    apply: 'build',
    enforce: 'pre',
    transform(code, file) {
      if (!/sqlite-wasm\/dist\/index\.mjs$/.test(file.replaceAll('\\', '/'))) return undefined;
      const missing = workers.find((worker) => !code.includes(worker));
      if (missing !== undefined) throw new Error(`SQLite's package no longer says ${missing}`);
      return { code: workers.reduce((text, worker) => text.replaceAll(worker, instead), code), map: null };
    },
  };
}
