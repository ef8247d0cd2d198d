import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { callRefusal } from '../../src/server/library-answer.ts';
import { runningPage, sendRaw } from './running-page.ts';

const asked: string[] = [];
let page: Awaited<ReturnType<typeof runningPage>>;
beforeAll(async () => {
  page = await runningPage(new Map(), async (message) => {
    asked.push(new TextDecoder().decode(message));
    return [new TextEncoder().encode('an answer')];
  });
});
afterAll(() => page.close());

/** What the page itself sends, with changes; null leaves a header out. */
async function call(changes: Readonly<Record<string, string | null>> = {}, line = 'POST /library-call') {
  asked.length = 0;
  const own = `127.0.0.1:${page.port}`;
  const headers: Record<string, string | null> = {
    host: own,
    origin: `http://${own}`,
    'sec-fetch-site': 'same-origin',
    'content-type': 'application/octet-stream',
    'evenhand-call': '1',
    'content-length': '5',
    ...changes,
  };
  const lines = Object.entries(headers).flatMap(([name, value]) =>
    value === null ? [] : `${name}: ${value}\r\n`,
  );
  const text = await sendRaw(
    page.port,
    `${line} HTTP/1.1\r\n${lines.join('')}connection: close\r\n\r\nhello`,
  );
  return { status: Number(text.split(' ')[1]), text: text.toLowerCase(), asked: [...asked] };
}

describe('calls of the page to its library', () => {
  it('are answered, kept by nobody, and for no other origin to read', async () => {
    const { status, text, asked: messages } = await call();
    expect([status, messages]).toEqual([200, ['hello']]);
    expect(text).toContain('an answer');
    expect(text).toContain('cache-control: no-store');
    expect(text).toContain('cross-origin-resource-policy: same-origin');
    expect(text).not.toContain('access-control-allow');
  });

  it.each<[number, string, Record<string, string | null>, string?]>([
    [403, 'another page', { origin: 'https://evil.example', 'sec-fetch-site': 'cross-site' }],
    [403, 'another port of this machine', { origin: 'http://127.0.0.1:9' }],
    [403, 'a page without an origin', { origin: 'null' }],
    [403, 'a request without an origin', { origin: null }],
    [403, 'what a browser calls cross-site', { 'sec-fetch-site': 'cross-site' }],
    [403, 'what a browser calls same-site', { 'sec-fetch-site': 'same-site' }],
    [421, 'a name that was pointed at this machine', { host: 'evil.example', origin: 'http://evil.example' }],
    [421, 'its other name', { host: 'localhost:80', origin: 'http://localhost:80' }],
    [415, "another page's form", { 'content-type': 'text/plain', 'evenhand-call': null }],
    [415, 'a plain request', { 'evenhand-call': null }],
    [411, 'a body of unknown length', { 'content-length': null }],
    [413, 'an oversized body', { 'content-length': '99999999999' }],
    [405, 'reading', {}, 'GET /library-call'],
    [405, 'a question before a request', {}, 'OPTIONS /library-call'],
    [405, 'a method of another kind', {}, 'PUT /library-call'],
    [405, 'a longer path', {}, 'POST /library-call/../takes.sqlite'],
    [405, 'a written-over path', {}, 'POST /%6cibrary-call'],
  ])('are refused with %i: %s', async (status, _, changes, line) => {
    const answer = await call(changes, line);
    expect([answer.status, answer.asked]).toEqual([status, []]);
    expect(answer.text).not.toContain('access-control-allow');
  });

  it('are bounded', () => {
    const headers = {
      host: '127.0.0.1:1',
      origin: 'http://127.0.0.1:1',
      'content-type': 'application/octet-stream',
      'evenhand-call': '1',
    };
    const asking = (length: string) =>
      callRefusal({ method: 'POST', headers: { ...headers, 'content-length': length } }, 1, 10);
    expect(asking('10')).toBe(null);
    expect(asking('11')?.[0]).toBe(413);
    expect(asking('-')?.[0]).toBe(411);
  });
});
