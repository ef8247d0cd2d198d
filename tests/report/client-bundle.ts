import { join } from 'node:path';
import { build } from 'esbuild';

const entry = join(import.meta.dirname, '../../src/report/client/main.ts');
let bundle: Promise<string> | undefined;

/** The report's client script, bundled as for a build but kept in memory. */
export function clientBundle(): Promise<string> {
  bundle ??= build({
    entryPoints: [entry],
    bundle: true,
    minify: true,
    format: 'iife',
    platform: 'browser',
    target: 'es2022',
    write: false,
    logLevel: 'warning',
  }).then((result) => result.outputFiles[0]!.text);
  return bundle;
}
