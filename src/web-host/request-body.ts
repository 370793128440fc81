import type { IncomingMessage } from 'node:http';
import { refuse } from '#web-host/refusal.ts';
import type { Refusal } from '#web-host/refusal.ts';

export type Body = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly refusal: Refusal };

const refused = (status: number, reason: string): Body => ({ ok: false, refusal: refuse(status, 'request', reason) });

/**
 * Reads a JSON body of at most `limit` bytes. One that says it is longer is refused before a byte of it is read; one that
 * turns out longer is refused as soon as it does.
 */
export const requestBody = async (request: IncomingMessage, limit: number): Promise<Body> => {
  const tooLong = () => refused(413, `must be at most ${limit / 2 ** 20} MB`);
  const type = request.headers['content-type'] ?? '';
  if (!/^application\/json\s*(;\s*charset=utf-8\s*)?$/i.test(type)) return refused(415, 'must be application/json in UTF-8');
  if (request.headers['content-encoding'] !== undefined) return refused(415, 'must not be compressed');
  if (Number(request.headers['content-length'] ?? 0) > limit) return tooLong();

  const parts: Buffer[] = [];
  let length = 0;
  for await (const part of request.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer>) {
    length += part.length;
    if (length > limit) return tooLong();
    parts.push(part);
  }
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(parts));
    return { ok: true, value: text === '' ? {} : (JSON.parse(text) as unknown) };
  } catch {
    return refused(400, 'must be JSON in UTF-8');
  }
};
