import { createHash } from 'node:crypto';
import { defaultValues } from '#shared/parameters/catalogue.ts';

/** JSON with the keys of every object in order: equal values give equal text, however they were put together. */
export const canonicalJson = (value: unknown): string =>
  JSON.stringify(value, (_, part: unknown) =>
    part !== null && typeof part === 'object' && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).toSorted(([one], [other]) => (one < other ? -1 : 1)))
      : part,
  );

/** SHA-256 of a text, 64 hexadecimal digits. */
export const fingerprint = (text: string): string => createHash('sha256').update(text).digest('hex');

/** Changes when any number of the catalogue does. */
export const parameterVersion = fingerprint(canonicalJson(defaultValues)).slice(0, 16);
