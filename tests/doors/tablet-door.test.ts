import { X509Certificate } from 'node:crypto';
import { request as send } from 'node:https';
import type { IncomingHttpHeaders } from 'node:http';
import { connect } from 'node:net';
import type { TLSSocket } from 'node:tls';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ownCertificate } from '#web-host/tablet/certificate.ts';
import { oneTimeCode } from '#web-host/tablet/one-time-code.ts';
import { tabletDoor, type TabletDoor } from '#web-host/tablet/tablet-door.ts';
import { webHost, type WebHost } from '#web-host/web-host.ts';

/** Over real TLS, on the loopback address in the place of a network's. */
const address = '127.0.0.1';

interface Reply {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
  readonly fingerprint: string;
}

describe('the door for tablets', () => {
  let host: WebHost;
  let door: TabletDoor;
  let told: unknown[];
  let asked: [string, unknown][];
  let tell: (event: never) => void;
  beforeEach(async () => {
    told = [];
    asked = [];
    const page = {
      bytes: new TextEncoder().encode('<title>Fieldback</title>'),
      mediaType: 'text/html; charset=utf-8',
      lasting: false,
    };
    host = await webHost({
      application: {
        answer: (name, request) => {
          asked.push([name, request]);
          return Promise.resolve({ ok: true, value: { name } });
        },
        listen: (listener) => {
          tell = listener as never;
          return () => {};
        },
      },
      pages: new Map([['/index.html', page]]),
      bodyLimit: 2 ** 16,
    });
    door = await tabletDoor({ host, address, now: Date.now(), told: (what) => told.push(what) });
  });
  afterEach(async () => {
    await door.close();
    await host.close();
  });

  const ask = (method: string, path: string, headers: Record<string, string> = {}, body = ''): Promise<Reply> =>
    new Promise((resolve, reject) => {
      const { port } = new URL(door.origin);
      const outgoing = send({ host: address, port, method, path, headers, agent: false, rejectUnauthorized: false }, (reply) => {
        const fingerprint = (reply.socket as TLSSocket).getPeerCertificate().fingerprint256;
        let text = '';
        reply.setEncoding('utf8');
        reply.on('data', (part: string) => (text += part));
        reply.on('end', () => resolve({ status: reply.statusCode!, headers: reply.headers, text, fingerprint }));
      });
      outgoing.on('error', reject);
      outgoing.end(body);
    });
  const form = () => ({ origin: door.origin, 'content-type': 'application/x-www-form-urlencoded' });
  const give = (code: string): Promise<Reply> => ask('POST', '/code', form(), `code=${encodeURIComponent(code)}`);
  const enter = async (): Promise<string> => String((await give(door.code())).headers['set-cookie']).split(';')[0]!;
  const question = (cookie: string) => ({ cookie, origin: door.origin, 'content-type': 'application/json' });

  it('shows the fingerprint of the certificate it really uses, which names its address and no authority', async () => {
    const reply = await ask('GET', '/');
    expect(reply.fingerprint).toBe(door.fingerprint);
    const one = ownCertificate('192.0.2.7', Date.parse('2027-07-01T12:00:00Z'));
    const read = new X509Certificate(one.certificate);
    expect(read.checkIP('192.0.2.7')).toBe('192.0.2.7');
    expect(read.checkIP('192.0.2.8')).toBeUndefined();
    expect(read.ca).toBe(false);
    expect(read.verify(read.publicKey)).toBe(true);
    expect(new Date(read.validTo).toISOString()).toBe('2027-07-15T12:00:00.000Z');
    expect(new X509Certificate(ownCertificate('2001:db8::7', 1.8e12).certificate).checkIP('2001:db8::7')).toBe('2001:db8::7');
    expect(ownCertificate('192.0.2.7', 1.8e12).fingerprint).not.toBe(one.fingerprint);
  });

  it('speaks nothing but TLS', async () => {
    const heard = await new Promise((resolve) => {
      const socket = connect(Number(new URL(door.origin).port), address, () => socket.write('GET / HTTP/1.1\r\nHost: x\r\n\r\n'));
      let text = '';
      socket.on('data', (part) => (text += part.toString('latin1')));
      socket.on('close', () => resolve(text));
      socket.on('error', () => resolve(text));
    });
    expect(heard).not.toContain('Fieldback');
  });

  it('shows a stranger the code page, without a script, and nothing else', async () => {
    const page = await ask('GET', '/');
    expect(page.status).toBe(200);
    expect(page.headers['content-security-policy']).toMatch(/default-src 'none'/);
    expect(page.text).not.toContain('<script');
    expect(page.text).not.toContain(door.code().slice(0, 4));
    for (const path of ['/index.html', '/listen', '/assets/page-1.js', `/?token=${host.token}`])
      expect((await ask('GET', path)).status).toBe(401);
    expect((await ask('POST', '/answer/venue/list', { ...form(), 'content-type': 'application/json' }, '{}')).status).toBe(401);
    // Not even with the token of the loopback host.
    const bearer = { ...form(), 'content-type': 'application/json', authorization: `Bearer ${host.token}` };
    expect((await ask('POST', '/answer/venue/list', bearer, '{}')).status).toBe(401);
    expect(asked).toEqual([]);
  });

  it('lets a tablet in with the code, once, and then answers it like every page', async () => {
    const code = door.code();
    const reply = await give(code);
    expect(reply.status).toBe(303);
    expect(String(reply.headers['set-cookie'])).toMatch(
      /^__Host-fieldback=[\w-]{32}; Path=\/; Secure; HttpOnly; SameSite=Strict; Max-Age=43200$/,
    );
    expect(told).toEqual([{ kind: 'came-in', nextCode: door.code() }]);
    expect(door.code()).not.toBe(code);
    expect((await give(code)).status).toBe(403);

    const cookie = String(reply.headers['set-cookie']).split(';')[0]!;
    expect((await ask('GET', '/', { cookie })).text).toBe('<title>Fieldback</title>');
    const answer = await ask('POST', '/answer/venue/list', question(cookie), '{"a":1}');
    expect(answer.status).toBe(200);
    expect(asked).toEqual([['venue/list', { a: 1 }]]);
    // Limits of the loopback host hold behind the door too.
    expect((await ask('POST', '/answer/venue/list', question(cookie), `{"a":"${'x'.repeat(2 ** 17)}"}`)).status).toBe(413);
  });

  it('hands events on as they come', async () => {
    const cookie = await enter();
    const heard = await new Promise<string>((resolve, reject) => {
      const { port } = new URL(door.origin);
      send({ host: address, port, path: '/listen', headers: { cookie }, agent: false, rejectUnauthorized: false }, (reply) => {
        reply.setEncoding('utf8');
        reply.on('data', (part: string) => {
          if (part.includes('data:')) resolve(part);
          else tell({ kind: 'changed', what: 'venue', id: 'one' } as never);
        });
      })
        .on('error', reject)
        .end();
    });
    expect(heard).toContain('"what":"venue"');
  });

  it('refuses another name, another page and a question without a page', async () => {
    const cookie = await enter();
    expect((await ask('GET', '/', { cookie, host: 'elsewhere.example' })).status).toBe(421);
    expect(
      (await ask('POST', '/answer/venue/list', { ...question(cookie), origin: 'https://elsewhere.example' }, '{}')).status,
    ).toBe(403);
    expect((await ask('GET', '/', { cookie, 'sec-fetch-site': 'cross-site' })).status).toBe(403);
    const { origin: _, ...silent } = question(cookie);
    expect((await ask('POST', '/answer/venue/list', silent, '{}')).status).toBe(403);
    expect((await ask('GET', '/index.html', { cookie: `${cookie}x` })).status).toBe(401);
    expect(asked).toEqual([]);
  });

  it('five wrong codes in a row shut it: the right one comes too late, and whoever was in is out', async () => {
    const cookie = await enter();
    const wrong = String((Number(door.code().replace(' ', '')) + 1) % 1e8).padStart(8, '0');
    for (let time = 1; time <= 4; time++) expect((await give(wrong)).text).toContain('not the code');
    const last = await give(wrong);
    expect(last.status).toBe(403);
    expect(last.text).toContain('shut');
    expect(told.at(-1)).toEqual({ kind: 'shut' });
    await door.close();
    await expect(give(door.code())).rejects.toThrow();
    await expect(ask('GET', '/', { cookie })).rejects.toThrow();
  });

  it('a right code clears the wrong ones before it', () => {
    const code = oneTimeCode();
    for (let round = 0; round < 3; round++) {
      for (let time = 0; time < 4; time++) expect(code.try('')).toBe('wrong');
      expect(code.try(code.shown())).toBe('right');
    }
    for (let time = 0; time < 4; time++) code.try('no');
    expect(code.try('no')).toBe('shut');
    expect(code.try(code.shown())).toBe('shut');
  });
});
