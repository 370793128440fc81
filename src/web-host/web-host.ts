import { randomBytes } from 'node:crypto';
import { createServer } from 'node:http';
import type { IncomingMessage, ServerResponse } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';
import { answerPath, listenPath } from '#shared/contract/bridge.ts';
import type { Bridge } from '#shared/contract/bridge.ts';
import type { Answer } from '#shared/contract/failure.ts';
import { requestLimit } from '#application/request-size.ts';
import { pageHeaders } from '#platform/pages/built-pages.ts';
import type { BuiltPage } from '#platform/pages/built-pages.ts';
import { admission } from '#web-host/admission.ts';
import { eventStream } from '#web-host/event-stream.ts';
import { refuse, statusOf } from '#web-host/refusal.ts';
import type { Refusal } from '#web-host/refusal.ts';
import { requestBody } from '#web-host/request-body.ts';

export interface WebHostOptions {
  /** Whoever answers: the application, or a part of it in a test. */
  readonly application: Bridge;
  /** The built pages by path. */
  readonly pages: ReadonlyMap<string, BuiltPage>;
  /** 0 or absent: any free port. */
  readonly port?: number;
  /** Longest body, bytes; the application's own limit when left out. */
  readonly bodyLimit?: number;
  /** ms a request may take to arrive. */
  readonly patience?: number;
}

export interface WebHost {
  /** Opens the application in a browser; holds the token of this start. */
  readonly address: string;
  /** `http://127.0.0.1:<port>` */
  readonly origin: string;
  readonly token: string;
  /** An address that lets one browser in, once: what starts a browser is seen by everybody on the machine, in the list of programs. */
  addressForOnce(): string;
  close(): Promise<void>;
}

const sendAnswer = (response: ServerResponse, status: number, answer: Answer<unknown>): void => {
  response.writeHead(status, {
    'content-type': 'application/json; charset=utf-8',
    'cache-control': 'no-store',
    'x-content-type-options': 'nosniff',
    'cross-origin-resource-policy': 'same-origin',
  });
  response.end(JSON.stringify(answer));
};

/** ms and bytes that are still taken, and thrown away, from a sender whose request was refused, so that it can hear why. */
const farewell = { time: 5_000, length: 64 * 2 ** 20 };

/** Connections on which something was refused: what else was sent down them, in the same packet perhaps, is not looked at. */
const shut = new WeakSet<Socket>();

/** Says no, and ends the connection once the sender has stopped talking. */
const sendRefusal = (request: IncomingMessage, response: ServerResponse, { status, failure }: Refusal): void => {
  shut.add(request.socket);
  const text = Buffer.from(JSON.stringify({ ok: false, failure } satisfies Answer<unknown>));
  response.writeHead(status, {
    'content-type': 'application/json; charset=utf-8',
    'content-length': text.length,
    'cache-control': 'no-store',
    'x-content-type-options': 'nosniff',
    'cross-origin-resource-policy': 'same-origin',
    connection: 'close',
  });
  response.write(text);
  let length = 0;
  const end = () => {
    clearTimeout(timer);
    response.end();
  };
  const timer = setTimeout(end, farewell.time);
  if (request.complete) return end();
  request.on('data', (part: Buffer) => {
    length += part.length;
    if (length > farewell.length) end();
  });
  request.on('end', end);
  request.on('close', end);
};

/**
 * Serves the application on the loopback address, to this machine's user alone: who comes must name this address, come from
 * a page of it and hold the token of this start. There is no CORS: other sites get nothing.
 */
export const webHost = async ({
  application,
  pages,
  port = 0,
  bodyLimit = requestLimit,
  patience = 30_000,
}: WebHostOptions): Promise<WebHost> => {
  const token = randomBytes(24).toString('base64url');
  const once = new Set<string>();
  const events = eventStream();
  const stopListening = application.listen(events.tell);
  const server = createServer({
    headersTimeout: Math.min(10_000, patience),
    requestTimeout: patience,
    connectionsCheckingInterval: Math.min(2_000, patience),
    keepAliveTimeout: 5_000,
    maxHeaderSize: 16 * 1024,
  });
  server.maxConnections = 200;
  let gate = admission(0, token);

  const answerQuestion = async (request: IncomingMessage, response: ServerResponse, name: string): Promise<void> => {
    const body = await requestBody(request, bodyLimit);
    if (!body.ok) return sendRefusal(request, response, body.refusal);
    const answer = await application.answer(name, body.value);
    sendAnswer(response, answer.ok ? 200 : statusOf[answer.failure.kind], answer);
  };

  const handOut = (request: IncomingMessage, response: ServerResponse, path: string): void => {
    const page = pages.get(path === '/' ? '/index.html' : path);
    if (page === undefined) return sendRefusal(request, response, refuse(404, 'path', 'leads to nothing'));
    response.writeHead(200, { ...pageHeaders(page), 'content-length': page.bytes.length });
    response.end(request.method === 'HEAD' ? undefined : page.bytes);
  };

  const route = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const refusal = gate.refuseHost(request) ?? gate.refuseCoding(request) ?? gate.refuseOrigin(request);
    if (refusal) return sendRefusal(request, response, refusal);
    const [path = '/', query = ''] = (request.url ?? '/').split('?', 2);
    const reads = request.method === 'GET' || request.method === 'HEAD';

    // The printed address: its token becomes a cookie and leaves the address line.
    const shown = reads && path === '/' ? new URLSearchParams(query).get('token') : null;
    if (shown !== null && (gate.knows(shown) || once.delete(shown))) {
      response.writeHead(303, {
        location: '/',
        'set-cookie': gate.cookie,
        'cache-control': 'no-store',
        'referrer-policy': 'no-referrer',
      });
      response.end();
      return;
    }
    const stranger = gate.refuseStranger(request);
    if (stranger) return sendRefusal(request, response, stranger);

    if (path.startsWith(answerPath)) {
      if (request.method !== 'POST') return sendRefusal(request, response, refuse(405, 'method', 'must be POST'));
      return answerQuestion(request, response, path.slice(answerPath.length));
    }
    if (!reads) return sendRefusal(request, response, refuse(405, 'method', 'must be GET'));
    if (path === listenPath) {
      if (events.admit(response)) return;
      return sendRefusal(request, response, {
        status: 503,
        failure: { kind: 'busy', message: 'Too many pages listen already. Close one of them.' },
      });
    }
    handOut(request, response, path);
  };

  server.on('request', (request, response) => {
    if (shut.has(request.socket)) return;
    route(request, response).catch(() => {
      if (response.headersSent) response.destroy();
      else
        sendRefusal(request, response, {
          status: 500,
          failure: { kind: 'unexpected', message: 'The request could not be answered.' },
        });
    });
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', resolve);
  });
  const bound = (server.address() as AddressInfo).port;
  gate = admission(bound, token);
  const origin = `http://127.0.0.1:${bound}`;

  return {
    address: `${origin}/?token=${token}`,
    origin,
    token,
    addressForOnce: () => {
      const key = randomBytes(24).toString('base64url');
      once.add(key);
      return `${origin}/?token=${key}`;
    },
    close: async () => {
      stopListening();
      events.close();
      const closed = new Promise<void>((resolve) => server.close(() => resolve()));
      server.closeAllConnections();
      await closed;
    },
  };
};
