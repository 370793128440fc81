import type { Answer } from '#shared/contract/failure.ts';
import { done, invalid } from '#services/answers.ts';

/** Bytes of one photograph at most: as much as a telephone's camera makes, and with its Base64 well inside one request. */
export const mostBytes = 6 * 1024 * 1024;

/** The bytes of a Base64 text, or what is wrong with it. */
export const bytesOf = (base64: string): Answer<Uint8Array> => {
  const refuse = (reason: string) => invalid([{ field: 'base64', reason }]);
  if (base64.length > Math.ceil(mostBytes / 3) * 4) return refuse(`holds more than ${mostBytes / 1024 / 1024} MB`);
  const bytes = Buffer.from(base64, 'base64');
  if (bytes.length === 0 || bytes.toString('base64') !== base64) return refuse('is not the Base64 of a file');
  if (bytes.length > mostBytes) return refuse(`holds more than ${mostBytes / 1024 / 1024} MB`);
  return done(new Uint8Array(bytes));
};
