import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { ownAddress, pageAnswer } from './page-answer.ts';
import type { PageFiles } from './page-files.ts';

/** A server of the page's files, for this machine alone; `pageAnswer` says what it gives. */
export function pageServer(files: PageFiles): Server {
  const server = createServer(({ method = '', url: target = '', headers }, response) => {
    const { port } = server.address() as AddressInfo;
    const asked = { method, target, host: headers.host, origin: headers.origin };
    const answer = pageAnswer(asked, port, files);
    response.writeHead(answer.status, answer.headers);
    response.end(method === 'HEAD' ? undefined : answer.body);
  });
  server.on('clientError', (_, socket) => {
    if (socket.writable) socket.end('HTTP/1.1 400 Bad Request\r\nConnection: close\r\n\r\n');
  });
  return server;
}

/** Starts the server on this machine's own address and gives its port; 0 takes any free one. Rejects with the system's fault. */
export function listen(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, ownAddress, () => resolve((server.address() as AddressInfo).port));
  });
}
