import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import type { Plugin } from 'vite';
import { homeFile } from '../offline/home-file.ts';

const worker = 'service-worker.js';

/** Writes the service worker with the list of every file of the page and a version that changes with any of them. */
export function offlineList(): Plugin {
  let publicFolder = '';
  let root = '';
  return {
    name: 'offline-list',
    apply: 'build',
    enforce: 'post',
    configResolved(config) {
      publicFolder = config.publicDir;
      root = config.root;
    },
    generateBundle: {
      order: 'post',
      async handler(_, bundle) {
        const contents = new Map<string, string | Uint8Array>();
        for (const [name, part] of Object.entries(bundle)) {
          contents.set(name, part.type === 'chunk' ? part.code : part.source);
        }
        for (const name of readdirSync(publicFolder)) {
          contents.set(name, readFileSync(join(publicFolder, name)));
        }
        const files = [...contents.keys()]
          .filter((name) => !name.endsWith('.map') && name !== homeFile)
          .sort();
        const hash = createHash('sha256');
        for (const name of files) hash.update(`${name}\0`).update(contents.get(name)!);
        const { outputFiles } = await build({
          entryPoints: [join(root, 'offline/service-worker.ts')],
          bundle: true,
          minify: true,
          write: false,
          format: 'iife',
          target: 'es2022',
          define: {
            __files: JSON.stringify(files),
            __version: JSON.stringify(hash.digest('hex').slice(0, 16)),
          },
        });
        this.emitFile({ type: 'asset', fileName: worker, source: outputFiles[0]!.text });
      },
    },
  };
}
