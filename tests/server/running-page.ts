import { connect } from 'node:net';
import { join } from 'node:path';
import type { AnswerCall } from '../../src/server/library-answer.ts';
import { type PageFiles, readPageFiles } from '../../src/server/page-files.ts';
import { listen, pageServer } from '../../src/server/page-server.ts';

const built = join(import.meta.dirname, '../../dist/page');

/** A server of the built page, or of other files, on a free port, to be closed. */
export async function runningPage(
  files: PageFiles = readPageFiles(built),
  answer?: AnswerCall,
): Promise<{ readonly port: number; close(): void }> {
  const server = pageServer(files, answer);
  const port = await listen(server, 0);
  return {
    port,
    close() {
      server.closeAllConnections();
      server.close();
    },
  };
}

/** Sends text as it stands to a port and gives all that comes back. */
export function sendRaw(port: number, text: string, host = '127.0.0.1'): Promise<string> {
  return new Promise((resolve, reject) => {
    const parts: Buffer[] = [];
    const socket = connect(port, host, () => socket.write(text));
    socket.on('data', (part) => parts.push(part));
    socket.on('error', reject);
    socket.on('close', () => resolve(Buffer.concat(parts).toString('latin1')));
  });
}
