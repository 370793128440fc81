import { timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import { refuse } from '#web-host/refusal.ts';
import type { Refusal } from '#web-host/refusal.ts';

/** Compares two secrets without telling by the time it takes how much of them agrees. */
const agree = (given: string, expected: string): boolean => {
  const [one, other] = [Buffer.from(given), Buffer.from(expected)];
  return one.length === other.length && timingSafeEqual(one, other);
};

const cookieOf = (request: IncomingMessage, name: string): string | null => {
  for (const part of (request.headers.cookie ?? '').split(';')) {
    const at = part.indexOf('=');
    if (at > 0 && part.slice(0, at).trim() === name) return part.slice(at + 1).trim();
  }
  return null;
};

/** The host a request names; null when it names none or several, of which Node would show the first alone. */
export const hostOf = (request: IncomingMessage): string | null => {
  const [named, ...more] = request.headersDistinct.host ?? [];
  return named === undefined || more.length > 0 ? null : named;
};

/** Who may in: requests to this very address, from a page of it, with the token of this very start. */
export const admission = (port: number, token: string) => {
  const hosts = [`127.0.0.1:${port}`, `localhost:${port}`];
  // Cookies do not know ports: two programs on one machine must not overwrite each other's.
  const cookieName = `fieldback-${port}`;

  return {
    /** The header that lets the browser in from now on. */
    cookie: `${cookieName}=${token}; Path=/; HttpOnly; SameSite=Strict`,

    /** Whether `given` is the token of this start. */
    knows: (given: string): boolean => agree(given, token),

    /** Another site that points its name at this machine still sends its own name: refused. */
    refuseHost: (request: IncomingMessage): Refusal | null => {
      const named = hostOf(request);
      if (named === null) return refuse(400, 'Host', 'must be named once');
      return hosts.includes(named) ? null : refuse(421, 'Host', 'is not the address this program listens on');
    },

    /**
     * A body comes with its length or in chunks and in no other coding: where two programs read the end of one request differently, a
     * second one hides in it. Node itself refuses a length beside a coding.
     */
    refuseCoding: (request: IncomingMessage): Refusal | null => {
      const coding = request.headers['transfer-encoding'];
      return coding === undefined || coding === 'chunked'
        ? null
        : refuse(400, 'Transfer-Encoding', 'must be chunked or left out');
    },

    /** Requests that a page of another origin made are refused, whatever they carry. */
    refuseOrigin: (request: IncomingMessage): Refusal | null => {
      const { origin } = request.headers;
      if (origin !== undefined && !hosts.some((host) => origin === `http://${host}`))
        return refuse(403, 'Origin', 'is not a page of this program');
      const site = request.headers['sec-fetch-site'];
      if (site !== undefined && site !== 'same-origin' && site !== 'none')
        return refuse(403, 'Sec-Fetch-Site', 'must be same-origin');
      return null;
    },

    /** A page shows the cookie and its origin; a program of the user's own may show the token itself. */
    refuseStranger: (request: IncomingMessage): Refusal | null => {
      const bearer = /^Bearer (\S+)$/.exec(request.headers.authorization ?? '')?.[1];
      if (bearer !== undefined)
        return agree(bearer, token) ? null : refuse(401, 'Authorization', 'is not the token of this start');
      const shown = cookieOf(request, cookieName);
      if (shown === null || !agree(shown, token))
        return refuse(401, 'token', 'is missing or from an earlier start; open the address that the program printed');
      if (request.method === 'POST' && request.headers.origin === undefined) return refuse(403, 'Origin', 'is missing');
      return null;
    },
  };
};
export type Admission = ReturnType<typeof admission>;
