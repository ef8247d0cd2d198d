import { readdirSync, readFileSync } from 'node:fs';
import { extname, join, relative, sep } from 'node:path';

export interface PageFile {
  readonly contents: Uint8Array;
  readonly type: string;
  /** Its name changes with its contents. */
  readonly unchanging: boolean;
}

/** Address below the root, such as `/assets/index.js` → file. */
export type PageFiles = ReadonlyMap<string, PageFile>;

/** MIME types of what the page is made of (IANA media types). */
const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.wav': 'audio/wav',
};

/**
 * Reads the built page into memory; only what stands on this list is ever served, so no address can lead out of it.
 * The page itself stands at `/`, too.
 */
export function readPageFiles(folder: string): PageFiles {
  const files = new Map<string, PageFile>();
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    const address = `/${relative(folder, path).split(sep).join('/')}`;
    const file = {
      contents: readFileSync(path),
      type: types[extname(entry.name)] ?? 'application/octet-stream',
      unchanging: address.startsWith('/assets/'),
    };
    files.set(address, file);
    if (address === '/index.html') files.set('/', file);
  }
  return files;
}

/** The page's files with word of the library that its server holds in a folder. */
export function withHome(files: PageFiles, folder: string): PageFiles {
  const contents = new TextEncoder().encode(`${JSON.stringify({ library: { folder } })}\n`);
  return new Map([...files, ['/home.json', { contents, type: 'application/json', unchanging: false }]]);
}
