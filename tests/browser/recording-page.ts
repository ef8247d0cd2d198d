import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { build } from 'vite';

const kinds: Readonly<Record<string, string>> = { '.html': 'text/html', '.js': 'text/javascript' };

/** The recording parts built into a small page and served on this machine, to be closed. */
export async function recordingPage(): Promise<{ readonly url: string; close(): void }> {
  const folder = mkdtempSync(join(tmpdir(), 'evenhand-recording-'));
  await build({
    configFile: false,
    root: join(import.meta.dirname, 'recording-page'),
    base: './',
    logLevel: 'error',
    worker: { format: 'es' },
    build: { outDir: folder, emptyOutDir: true, target: 'es2022', assetsInlineLimit: 0, minify: false },
  });
  const server = createServer((request, response) => {
    const name = (request.url ?? '/').split('?')[0]!;
    const file = name === '/' ? '/index.html' : name;
    try {
      const bytes = readFileSync(join(folder, file.replaceAll('..', '')));
      response.writeHead(200, { 'content-type': kinds[extname(file)] ?? 'application/octet-stream' });
      response.end(bytes);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    close() {
      server.closeAllConnections();
      server.close();
      rmSync(folder, { recursive: true });
    },
  };
}

/** Samples that a page has given as text. */
export function samplesOf(text: string): Float32Array {
  const bytes = Buffer.from(text, 'base64');
  return new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length));
}
