import { join } from 'node:path';
import { build } from 'esbuild';

const bundles = new Map<string, Promise<string>>();

/** A script for the browser, bundled as for a build but kept in memory; `entry` is counted from the repository. */
export function browserBundle(entry: string): Promise<string> {
  const there = bundles.get(entry);
  if (there !== undefined) return there;
  const bundle = build({
    entryPoints: [join(import.meta.dirname, '../..', entry)],
    bundle: true,
    minify: true,
    format: 'iife',
    platform: 'browser',
    target: 'es2022',
    write: false,
    logLevel: 'warning',
  }).then((result) => result.outputFiles[0]!.text);
  bundles.set(entry, bundle);
  return bundle;
}

/** The script that draws a report's pictures. */
export const clientBundle = () => browserBundle('src/report/client/main.ts');

/** The script that plays a report's sound. */
export const listeningBundle = () => browserBundle('src/report/client/listening-main.ts');

/** The script that saves the files packed in a report. */
export const filesBundle = () => browserBundle('src/report/client/downloads-main.ts');
