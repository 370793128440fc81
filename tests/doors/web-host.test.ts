import { request as send } from 'node:http';
import type { IncomingHttpHeaders } from 'node:http';
import { connect } from 'node:net';
import { networkInterfaces } from 'node:os';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Answer } from '#shared/contract/failure.ts';
import type { Bridge } from '#shared/contract/bridge.ts';
import type { Event } from '#shared/contract/job.ts';
import { webHost } from '#web-host/web-host.ts';
import type { WebHost } from '#web-host/web-host.ts';

/** Says back what it was asked, and lets a test tell events. */
const echo = () => {
  const asked: (readonly [string, unknown])[] = [];
  const listeners = new Set<(event: Event) => void>();
  const application: Bridge = {
    answer: (name, request) => {
      asked.push([name, request]);
      return Promise.resolve({ ok: true, value: { name, request } });
    },
    listen: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
  return { application, asked, listeners, tell: (event: Event) => listeners.forEach((listener) => listener(event)) };
};

interface Reply {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

describe('the web host', () => {
  const inside = echo();
  let host: WebHost;
  let port: number;
  let cookie: string;
  beforeAll(async () => {
    const page = (text: string, mediaType: string, lasting: boolean) => ({
      bytes: new TextEncoder().encode(text),
      mediaType,
      lasting,
    });
    const pages = new Map([
      ['/index.html', page('<!doctype html><title>Fieldback</title>', 'text/html; charset=utf-8', false)],
      ['/assets/page-1.js', page('export {};', 'text/javascript; charset=utf-8', true)],
    ]);
    host = await webHost({ application: inside.application, pages, bodyLimit: 2 ** 20, patience: 1_500 });
    port = Number(new URL(host.origin).port);
    cookie = String((await ask('GET', `/?token=${host.token}`, {})).headers['set-cookie']).split(';')[0]!;
  });
  afterAll(() => host.close());

  /** One request with exactly these headers; Host is right unless given. */
  const ask = (method: string, path: string, headers: Record<string, string>, body?: string | Buffer): Promise<Reply> =>
    new Promise((resolve, reject) => {
      const outgoing = send({ host: '127.0.0.1', port, method, path, headers, agent: false }, (reply) => {
        let text = '';
        reply.setEncoding('utf8');
        reply.on('data', (part: string) => (text += part));
        reply.on('end', () => resolve({ status: reply.statusCode!, headers: reply.headers, text }));
      });
      outgoing.on('error', reject);
      outgoing.end(body);
    });
  const json = { 'content-type': 'application/json' };
  const page = () => ({ ...json, cookie, origin: host.origin });
  const program = () => ({ ...json, authorization: `Bearer ${host.token}` });
  const failureOf = (reply: Reply) => {
    const answer = JSON.parse(reply.text) as Answer<unknown>;
    expect(answer.ok).toBe(false);
    return (answer as Extract<Answer<unknown>, { ok: false }>).failure;
  };
  const refused = async (status: number, field: string, reply: Promise<Reply>) => {
    const before = inside.asked.length;
    const got = await reply;
    expect(got.status).toBe(status);
    expect(failureOf(got)).toMatchObject({ kind: 'invalid-request', problems: [{ field }] });
    expect(inside.asked.length).toBe(before);
    for (const header of Object.keys(got.headers)) expect(header).not.toMatch(/^access-control/);
  };

  it('answers a page that holds the cookie, and a program that holds the token', async () => {
    for (const headers of [page(), program()]) {
      const reply = await ask('POST', '/answer/venue/read', headers, '{"id":"one"}');
      expect(reply.status).toBe(200);
      expect(JSON.parse(reply.text)).toEqual({ ok: true, value: { name: 'venue/read', request: { id: 'one' } } });
    }
  });

  it('turns the token of the printed address into a cookie that scripts and other sites cannot use', async () => {
    const reply = await ask('GET', `/?token=${host.token}`, {});
    expect(reply.status).toBe(303);
    expect(reply.headers.location).toBe('/');
    expect(String(reply.headers['set-cookie'])).toMatch(/^fieldback-\d+=[\w-]{32}; Path=\/; HttpOnly; SameSite=Strict$/);
    expect(reply.text).toBe('');
  });

  it('lets one browser in with an address for once, and nobody after it', async () => {
    const { pathname, search, searchParams } = new URL(host.addressForOnce());
    const key = searchParams.get('token')!;
    expect(key).not.toBe(host.token);
    await refused(401, 'Authorization', ask('POST', '/answer/venue/list', { ...json, authorization: `Bearer ${key}` }, '{}'));
    const first = await ask('GET', pathname + search, {});
    expect(first.status).toBe(303);
    expect(String(first.headers['set-cookie']).split(';')[0]).toBe(cookie);
    await refused(401, 'token', ask('GET', pathname + search, {}));
  });

  describe('listens for this machine alone', () => {
    const others = Object.values(networkInterfaces())
      .flat()
      .filter((found) => found && !found.internal && found.family === 'IPv4')
      .map((found) => found!.address);
    it.skipIf(others.length === 0)('and is not there on its other addresses', async () => {
      const outcome = await new Promise((resolve) => {
        const socket = connect(port, others[0]!);
        socket.on('connect', () => resolve('connected'));
        socket.on('error', () => resolve('refused'));
        socket.setTimeout(2_000, () => resolve('silent'));
      });
      expect(outcome).not.toBe('connected');
    });
    it('and takes any free port and a new token at each start', async () => {
      const other = await webHost({ application: echo().application, pages: new Map() });
      expect(other.origin).not.toBe(host.origin);
      expect(other.token).not.toBe(host.token);
      await other.close();
    });
  });

  describe('refuses a stranger', () => {
    it('without a token', () => refused(401, 'token', ask('POST', '/answer/venue/list', { ...json, origin: host.origin }, '{}')));
    it('with a token of an earlier start', () =>
      refused(
        401,
        'token',
        ask('POST', '/answer/venue/list', { ...page(), cookie: `fieldback-${port}=${'a'.repeat(32)}` }, '{}'),
      ));
    it('with a shorter token', () =>
      refused(401, 'token', ask('POST', '/answer/venue/list', { ...page(), cookie: cookie.slice(0, -1) }, '{}')));
    it('with a wrong bearer', () =>
      refused(401, 'Authorization', ask('POST', '/answer/venue/list', { ...program(), authorization: 'Bearer nothing' }, '{}')));
    it('with a wrong token in the address', () => refused(401, 'token', ask('GET', '/?token=nothing', {})));
    it('with the token in the address of a question', () =>
      refused(401, 'token', ask('POST', `/answer/venue/list?token=${host.token}`, { ...json, origin: host.origin }, '{}')));
    it('who only wants the pages', () => refused(401, 'token', ask('GET', '/', {})));
    it('who only wants to listen', () => refused(401, 'token', ask('GET', '/listen', {})));
  });

  describe('refuses other sites', () => {
    it('that point their name at this machine', () =>
      refused(421, 'Host', ask('POST', '/answer/venue/list', { ...page(), host: `elsewhere.invalid:${port}` }, '{}')));
    it('that name another port', () =>
      refused(421, 'Host', ask('POST', '/answer/venue/list', { ...page(), host: '127.0.0.1:1' }, '{}')));
    it('that name the machine by all zeros', () =>
      refused(421, 'Host', ask('POST', '/answer/venue/list', { ...page(), host: `0.0.0.0:${port}` }, '{}')));
    it('by their origin', () =>
      refused(403, 'Origin', ask('POST', '/answer/venue/list', { ...page(), origin: 'https://elsewhere.invalid' }, '{}')));
    it('that have no origin', () =>
      refused(403, 'Origin', ask('POST', '/answer/venue/list', { ...page(), origin: 'null' }, '{}')));
    it('on another port of this machine', () =>
      refused(403, 'Origin', ask('POST', '/answer/venue/list', { ...page(), origin: 'http://127.0.0.1:1' }, '{}')));
    it('that load an address of ours', () =>
      refused(403, 'Sec-Fetch-Site', ask('GET', '/', { cookie, 'sec-fetch-site': 'cross-site' })));
    it('that ask with a cookie and no origin', () =>
      refused(403, 'Origin', ask('POST', '/answer/venue/list', { ...json, cookie }, '{}')));
    it('that ask beforehand whether they may', async () => {
      const reply = await ask('OPTIONS', '/answer/venue/list', {
        origin: 'https://elsewhere.invalid',
        'access-control-request-method': 'POST',
      });
      expect(reply.status).toBe(403);
      expect(Object.keys(reply.headers).filter((header) => header.startsWith('access-control'))).toEqual([]);
    });
    it('that send a form', () =>
      refused(415, 'request', ask('POST', '/answer/venue/list', { ...page(), 'content-type': 'text/plain' }, '{}')));
  });

  describe('bounds what it reads', () => {
    const large = Buffer.alloc(50 * 2 ** 20, 120);
    it('refuses a long body before reading it', () =>
      refused(413, 'request', ask('POST', '/answer/venue/list', { ...page(), 'content-length': String(large.length) }, large)));
    it('refuses a body that turns out long', () =>
      refused(413, 'request', ask('POST', '/answer/venue/list', { ...page(), 'transfer-encoding': 'chunked' }, large)));
    it('refuses a packed body', () =>
      refused(415, 'request', ask('POST', '/answer/venue/list', { ...page(), 'content-encoding': 'gzip' }, 'x')));
    it('refuses what is not JSON', () => refused(400, 'request', ask('POST', '/answer/venue/list', page(), '{"id":')));
    it('refuses what is not UTF-8', () =>
      refused(400, 'request', ask('POST', '/answer/venue/list', page(), Buffer.from([0x22, 0xff, 0x22]))));
    it('takes a body of the full length', async () => {
      const body = JSON.stringify('x'.repeat(2 ** 20 - 2));
      expect((await ask('POST', '/answer/venue/list', page(), body)).status).toBe(200);
    });
    it('refuses headers that do not end', async () => {
      const reply = await ask('GET', '/', { cookie, 'x-long': 'x'.repeat(32 * 1024) });
      expect(reply.status).toBe(431);
    });
    it('ends a request that does not arrive', async () => {
      const text = await new Promise<string>((resolve) => {
        let got = '';
        const socket = connect(port, '127.0.0.1', () =>
          socket.write(`POST /answer/venue/list HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n`),
        );
        socket.on('data', (part) => (got += part.toString()));
        socket.on('close', () => resolve(got));
        socket.on('error', () => resolve(got));
      });
      expect(text).toMatch(/^HTTP\/1\.1 408/);
    });
  });

  describe('hands out its pages and nothing else', () => {
    it('with a strict content policy', async () => {
      const reply = await ask('GET', '/', { cookie });
      expect(reply.status).toBe(200);
      expect(reply.text).toContain('<title>Fieldback</title>');
      expect(reply.headers).toMatchObject({
        'content-type': 'text/html; charset=utf-8',
        'cache-control': 'no-store',
        'x-content-type-options': 'nosniff',
        'referrer-policy': 'no-referrer',
        'cross-origin-opener-policy': 'same-origin',
        'cross-origin-resource-policy': 'same-origin',
      });
      expect(reply.headers['content-security-policy']).toContain("default-src 'none'; script-src 'self'");
      expect(reply.headers['content-security-policy']).toContain("frame-ancestors 'none'");
      expect(reply.headers['content-security-policy']).not.toContain('unsafe');
    });
    it('and lets a browser keep what never changes', async () => {
      expect((await ask('GET', '/assets/page-1.js', { cookie })).headers['cache-control']).toContain('immutable');
      expect((await ask('HEAD', '/assets/page-1.js', { cookie })).text).toBe('');
    });
    it.each([
      '/../package.json',
      '/..%2f..%2fpackage.json',
      '/assets/../../package.json',
      '/%2e%2e/%2e%2e/etc/passwd',
      '//etc/passwd',
      '/assets',
      '/index.html%00',
      '/\\..\\package.json',
      '/__proto__',
      '/constructor',
    ])('not %s', async (path) => {
      await refused(404, 'path', ask('GET', path, { cookie }));
    });
    it('by reading alone', () => refused(405, 'method', ask('DELETE', '/', page())));
    it('and answers questions to POST alone', () => refused(405, 'method', ask('GET', '/answer/venue/list', { cookie })));
  });

  it('tells listeners what happens, and forgets those who leave', async () => {
    const listening = new AbortController();
    const reply = await fetch(`${host.origin}/listen`, { headers: { cookie }, signal: listening.signal });
    expect(reply.headers.get('content-type')).toBe('text/event-stream; charset=utf-8');
    const reader = reply.body!.pipeThrough(new TextDecoderStream()).getReader();
    await reader.read();
    inside.tell({ kind: 'changed', what: 'venue', id: 'one\nline' });
    expect((await reader.read()).value).toBe('data: {"kind":"changed","what":"venue","id":"one\\nline"}\n\n');
    listening.abort();
  });

  it('gives a seat to so many listeners and no more', async () => {
    const listening = new AbortController();
    const replies = await Promise.all(
      Array.from({ length: 40 }, () => fetch(`${host.origin}/listen`, { headers: { cookie }, signal: listening.signal })),
    );
    const statuses = replies.map((reply) => reply.status);
    expect(statuses.filter((status) => status === 200).length).toBeLessThanOrEqual(32);
    expect(statuses.filter((status) => status === 503).length).toBeGreaterThanOrEqual(8);
    listening.abort();
  });

  it('gives each kind of failure its status, and a thrown one no details', async () => {
    const failing: Bridge = {
      answer: (name) =>
        name === 'throws'
          ? Promise.reject(new Error('secret detail'))
          : Promise.resolve({
              ok: false,
              failure: { kind: 'not-found', message: 'There is no venue "one".', what: 'venue', id: 'one' },
            }),
      listen: () => () => undefined,
    };
    const other = await webHost({ application: failing, pages: new Map() });
    const headers = { ...json, authorization: `Bearer ${other.token}` };
    const missing = await fetch(`${other.origin}/answer/venue/read`, { method: 'POST', headers, body: '{}' });
    expect(missing.status).toBe(404);
    const thrown = await fetch(`${other.origin}/answer/throws`, { method: 'POST', headers, body: '{}' });
    expect(thrown.status).toBe(500);
    expect(await thrown.text()).not.toContain('secret');
    await other.close();
  });

  it('stops listening to the application when it closes, and its port is free again', async () => {
    const own = echo();
    const first = await webHost({ application: own.application, pages: new Map() });
    expect(own.listeners.size).toBe(1);
    await first.close();
    expect(own.listeners.size).toBe(0);
    const second = await webHost({ application: own.application, pages: new Map(), port: Number(new URL(first.origin).port) });
    expect(second.origin).toBe(first.origin);
    await second.close();
  });
});
