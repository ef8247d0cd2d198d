import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type AnswerCall, bodyOf, callAddress, callRefusal } from './library-answer.ts';
import { ownAddress, pageAnswer, refusal, sameForAll } from './page-answer.ts';
import type { PageFiles } from './page-files.ts';

/**
 * A server of the page's files, for this machine alone; `pageAnswer` says what it gives. With `answer` its page can ask
 * a library, under the conditions of `callRefusal`.
 */
export function pageServer(files: PageFiles, answer?: AnswerCall): Server {
  const server = createServer((request, response) => {
    const { method = '', url: target = '', headers } = request;
    const { port } = server.address() as AddressInfo;
    if (answer !== undefined && target === callAddress) {
      answerLibrary(request, response, port, answer).catch(() => response.destroy());
      return;
    }
    const asked = { method, target, host: headers.host, origin: headers.origin };
    const { status, headers: said, body } = pageAnswer(asked, port, files);
    response.writeHead(status, said);
    response.end(method === 'HEAD' ? undefined : body);
  });
  server.on('clientError', (_, socket) => {
    if (socket.writable) socket.end('HTTP/1.1 400 Bad Request\r\nConnection: close\r\n\r\n');
  });
  return server;
}

async function answerLibrary(
  request: IncomingMessage,
  response: ServerResponse,
  port: number,
  answer: AnswerCall,
): Promise<void> {
  const refused = callRefusal(request, port);
  if (refused !== null) {
    const { status, headers, body } = refusal(...refused);
    // What isn't read must not be taken for the next request.
    response.writeHead(status, { ...headers, connection: 'close' });
    response.end(body);
    return;
  }
  const parts = await answer(await bodyOf(request));
  response.writeHead(200, {
    ...sameForAll,
    'content-type': 'application/octet-stream',
    'content-length': `${parts.reduce((sum, { length }) => sum + length, 0)}`,
    'cache-control': 'no-store',
  });
  for (const part of parts) response.write(part);
  response.end();
}

/**
 * Starts the server on this machine's own address and gives its port; 0 takes any free one. Rejects with the system's
 * fault.
 */
export function listen(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, ownAddress, () => resolve((server.address() as AddressInfo).port));
  });
}
