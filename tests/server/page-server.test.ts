import { networkInterfaces } from 'node:os';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runningPage, sendRaw } from './running-page.ts';

let page: Awaited<ReturnType<typeof runningPage>>;
beforeAll(async () => {
  page = await runningPage();
});
afterAll(() => page.close());

interface Wish {
  readonly method?: string;
  readonly host?: string | null;
  readonly more?: string;
}

/** One request, its first line as it stands. */
async function ask(target: string, { method = 'GET', host, more = '' }: Wish = {}) {
  const named = host === null ? '' : `Host: ${host ?? `127.0.0.1:${page.port}`}\r\n`;
  const text = await sendRaw(
    page.port,
    `${method} ${target} HTTP/1.1\r\n${named}${more}Connection: close\r\n\r\n`,
  );
  const [head = '', ...body] = text.split('\r\n\r\n');
  return { status: Number(head.split(' ')[1]), head: head.toLowerCase(), body: body.join('\r\n\r\n') };
}

describe('the page server', () => {
  it('gives the page and its files with their types and headers that guard them', async () => {
    const { status, head, body } = await ask('/');
    expect(status).toBe(200);
    expect(body).toContain('<title>Evenhand</title>');
    for (const line of [
      'content-type: text/html; charset=utf-8',
      'x-content-type-options: nosniff',
      'referrer-policy: no-referrer',
      'cross-origin-opener-policy: same-origin',
      "content-security-policy: frame-ancestors 'none'",
      'cache-control: no-cache',
    ])
      expect(head).toContain(line);
    const script = /src="\.(\/assets\/[^"]+\.js)"/.exec(body)![1]!;
    const found = await ask(script);
    expect([found.status, found.body.length > 1000]).toEqual([200, true]);
    expect(found.head).toContain('text/javascript');
    expect(found.head).toContain('immutable');
  });

  it('lets no text become a script', async () => {
    const { body } = await ask('/');
    const policy = /http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(body)![1]!;
    expect(policy).toContain("default-src 'none'");
    expect(policy).toMatch(/script-src 'self' 'wasm-unsafe-eval' 'sha256-/);
    expect(policy).not.toMatch(/'unsafe-eval'|'unsafe-inline'|\*|https?:/);
    // The policy is there before anything that it should hold for.
    expect(body.indexOf('Content-Security-Policy')).toBeLessThan(body.indexOf('<script'));
  });

  it('answers HEAD without a body', async () => {
    const { status, head, body } = await ask('/', { method: 'HEAD' });
    expect([status, body]).toEqual([200, '']);
    expect(head).toMatch(/content-length: [1-9]/);
  });

  it.each(['POST', 'PUT', 'DELETE', 'OPTIONS', 'PATCH', 'TRACE'])('refuses %s', async (method) => {
    const { status, head } = await ask('/', { method });
    expect(status).toBe(405);
    expect(head).toContain('allow: get, head');
  });

  it.each([
    '/../package.json',
    '/assets/../../main.js',
    '/%2e%2e/main.js',
    '/%2E%2E%2Fmain.js',
    '/..%2fmain.js',
    '/..%5cmain.js',
    '/..\\main.js',
    '/%252e%252e/main.js',
    '/assets/%00',
    '/%c0%ae%c0%ae/main.js',
    '/.%2e/main.js',
    '//etc/passwd',
    '/etc/passwd',
    '/./index.html',
    '/assets',
    '/assets/',
    '/%',
    'main.js',
    'http://127.0.0.1/main.js',
  ])('gives nothing for %s', async (target) => {
    const { status, body } = await ask(target);
    expect([400, 404]).toContain(status);
    expect(body.length).toBeLessThan(100);
  });

  it('refuses a name that somebody else points at this machine', async () => {
    const { port } = page;
    for (const host of [
      `evil.example:${port}`,
      'evil.example',
      '127.0.0.1',
      `127.0.0.1:${port + 1}`,
      `127.0.0.1:${port}.evil.example`,
      `0.0.0.0:${port}`,
    ])
      expect((await ask('/', { host })).status, host).toBe(421);
    // RFC 9112, section 3.2: a request without a host, or with two, is a bad one.
    expect((await ask('/', { host: null })).status).toBe(400);
    const two = await ask('/', { more: 'Host: evil.example\r\n' });
    expect(two.status === 400 || two.body.includes('<title>')).toBe(true);
  });

  it('refuses other pages', async () => {
    for (const origin of [
      'https://evil.example',
      'null',
      `http://localhost:${page.port}`,
      `https://127.0.0.1:${page.port}`,
    ])
      expect((await ask('/', { more: `Origin: ${origin}\r\n` })).status, origin).toBe(403);
    expect((await ask('/', { more: `Origin: http://127.0.0.1:${page.port}\r\n` })).status).toBe(200);
  });

  it('leads the other name of this machine to the one address under which takes are kept', async () => {
    const { status, head } = await ask('/index.html', { host: `localhost:${page.port}` });
    expect(status).toBe(308);
    expect(head).toContain(`location: http://127.0.0.1:${page.port}/index.html`);
  });

  it('answers what is no request, and goes on', async () => {
    expect(await sendRaw(page.port, 'hello\r\n\r\n')).toContain('400');
    expect((await ask('/')).status).toBe(200);
  });

  it('is not to be reached from outside', async () => {
    const others = Object.values(networkInterfaces()).flatMap((all) =>
      (all ?? []).filter(({ internal }) => !internal),
    );
    for (const { address } of others)
      await expect(sendRaw(page.port, 'GET / HTTP/1.1\r\n\r\n', address), address).rejects.toThrow(
        /ECONN|EHOST|ENET|EINVAL/,
      );
    await expect(sendRaw(page.port, 'GET / HTTP/1.1\r\n\r\n', '::1')).rejects.toThrow(/ECONN|EADDRNOTAVAIL/);
  });
});
