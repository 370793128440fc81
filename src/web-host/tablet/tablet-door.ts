import { randomBytes, timingSafeEqual } from 'node:crypto';
import { request as ask } from 'node:http';
import type { IncomingHttpHeaders, IncomingMessage, OutgoingHttpHeaders, ServerResponse } from 'node:http';
import { createServer } from 'node:https';
import { isIPv6, type AddressInfo } from 'node:net';
import { hostOf } from '#web-host/admission.ts';
import { ownCertificate } from '#web-host/tablet/certificate.ts';
import { codePage, codePageHeaders } from '#web-host/tablet/code-page.ts';
import { oneTimeCode } from '#web-host/tablet/one-time-code.ts';
import type { WebHost } from '#web-host/web-host.ts';

export interface TabletDoorOptions {
  /** The loopback host behind the door, with its limits and its answers. */
  readonly host: Pick<WebHost, 'origin' | 'token'>;
  /** The one address of this machine it listens on. */
  readonly address: string;
  /** 0 or absent: any free port. */
  readonly port?: number;
  /** Epoch ms. */
  readonly now: number;
  /** ms a greeting and the headers may take to arrive; a whole request may take six times as long. */
  readonly patience?: number;
  /** Told when a code was used, with the next one, and when five wrong ones shut the door. */
  readonly told?: (what: { readonly kind: 'came-in'; readonly nextCode: string } | { readonly kind: 'shut' }) => void;
}

/** The way in for a tablet on the same network: TLS, one address, a one-time code. Nothing opens it but a person who asks for it. */
export interface TabletDoor {
  /** `https://<address>:<port>` */
  readonly origin: string;
  readonly fingerprint: string;
  readonly code: () => string;
  close(): Promise<void>;
}

/** Tablets that may be in at once. */
const seats = 16;
/** s a tablet stays in: a working day. */
const stay = 12 * 3600;
/** Headers of one connection alone, and those that the door speaks for. */
const ownHeaders = ['connection', 'keep-alive', 'transfer-encoding', 'upgrade', 'te', 'trailer', 'proxy-authorization'];
const doorHeaders = ['host', 'cookie', 'authorization', 'origin', 'referer', 'sec-fetch-site', 'forwarded', 'x-forwarded-for'];

const without = (headers: IncomingHttpHeaders, names: readonly string[]): OutgoingHttpHeaders =>
  Object.fromEntries(Object.entries(headers).filter(([name]) => !names.includes(name)));

const say = (response: ServerResponse, status: number, words: string): void => {
  response.writeHead(status, { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store', connection: 'close' });
  response.end(`${words}\n`);
};

/** The code of a form of one field, or null where the body is anything else. */
const codeIn = async (request: IncomingMessage): Promise<string | null> => {
  let body = '';
  for await (const part of request as AsyncIterable<Buffer>) {
    body += part.toString('latin1');
    if (body.length > 200) return null;
  }
  return new URLSearchParams(body).get('code');
};

/**
 * Opens the door on one address. Who comes must name that address, come from a page of it and hold the cookie that a right code gave;
 * then the request goes on to the loopback host, which has the last word as for every other page.
 * @throws where the address or port cannot be listened on
 */
export const tabletDoor = async ({
  host,
  address,
  port = 0,
  now,
  patience = 10_000,
  told = () => {},
}: TabletDoorOptions): Promise<TabletDoor> => {
  const { certificate, key, fingerprint } = ownCertificate(address, now);
  const code = oneTimeCode();
  const sessions = new Set<string>();
  let here = '';
  const server = createServer({
    cert: certificate,
    key,
    minVersion: 'TLSv1.2',
    handshakeTimeout: patience,
    headersTimeout: patience,
    requestTimeout: 6 * patience,
    connectionsCheckingInterval: Math.min(2_000, patience),
    keepAliveTimeout: 5_000,
    maxHeaderSize: 16 * 1024,
  });
  server.maxConnections = 100;
  const inner = new URL(host.origin);

  const isIn = ({ headers }: IncomingMessage): boolean =>
    (headers.cookie ?? '').split(';').some((part) => {
      const shown = Buffer.from(/^\s*__Host-fieldback=(\S*)$/.exec(part)?.[1] ?? '');
      return [...sessions].some((one) => shown.length === one.length && timingSafeEqual(shown, Buffer.from(one)));
    });

  const takeCode = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const refuse = (status: number, words: string): void => {
      response.writeHead(status, { ...codePageHeaders, connection: 'close' });
      response.end(codePage(words));
    };
    const given = await codeIn(request);
    if (given === null) return refuse(400, 'That was no code.');
    if (sessions.size >= seats) return refuse(503, `${seats} tablets are in already. Start Fieldback again to let others in.`);
    const answer = code.try(given);
    if (answer === 'wrong') return refuse(403, 'That is not the code.');
    if (answer === 'shut') {
      refuse(403, 'Five wrong codes: this door is shut. Open it again where Fieldback was started.');
      told({ kind: 'shut' });
      return void close();
    }
    const session = randomBytes(24).toString('base64url');
    sessions.add(session);
    response.writeHead(303, {
      location: '/',
      'set-cookie': `__Host-fieldback=${session}; Path=/; Secure; HttpOnly; SameSite=Strict; Max-Age=${stay}`,
      'cache-control': 'no-store',
    });
    response.end();
    told({ kind: 'came-in', nextCode: code.shown() });
  };

  const handOn = (request: IncomingMessage, response: ServerResponse): void => {
    const onward = ask({
      host: inner.hostname,
      port: inner.port,
      method: request.method,
      path: request.url,
      headers: {
        ...without(request.headers, [...ownHeaders, ...doorHeaders]),
        host: inner.host,
        authorization: `Bearer ${host.token}`,
      },
    });
    onward.on('response', (answer) => {
      response.writeHead(answer.statusCode ?? 502, without(answer.headers, ownHeaders));
      answer.pipe(response);
    });
    onward.on('error', () => (response.headersSent ? response.destroy() : say(response, 502, 'Fieldback does not answer.')));
    response.on('close', () => onward.destroy());
    request.pipe(onward);
  };

  server.on('request', (request, response) => {
    const { origin } = request.headers;
    const named = hostOf(request);
    if (named === null) return say(response, 400, 'A request names its host once.');
    if (named !== here) return say(response, 421, 'This is not the address of this door.');
    if (origin !== undefined && origin !== `https://${here}`) return say(response, 403, 'That page does not belong here.');
    const site = request.headers['sec-fetch-site'];
    if (site !== undefined && site !== 'same-origin' && site !== 'none')
      return say(response, 403, 'That page does not belong here.');
    if (request.method === 'POST' && origin === undefined) return say(response, 403, 'A page of this door must ask.');
    if (request.url === '/code' && request.method === 'POST') {
      takeCode(request, response).catch(() => response.destroy());
      return;
    }
    if (isIn(request)) return handOn(request, response);
    if (request.method !== 'GET' || request.url !== '/')
      return say(response, 401, 'A code is asked first: open / of this address.');
    response.writeHead(200, codePageHeaders);
    response.end(codePage(null));
  });

  let closed: Promise<void> | null = null;
  const close = (): Promise<void> => {
    sessions.clear();
    closed ??= new Promise((resolve) => {
      server.close(() => resolve());
      // What is being said now is said to the end.
      setTimeout(() => server.closeAllConnections(), 200);
    });
    return closed;
  };

  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, address, resolve);
  });
  here = `${isIPv6(address) ? `[${address}]` : address}:${(server.address() as AddressInfo).port}`;
  return { origin: `https://${here}`, fingerprint, code: code.shown, close };
};
