import type { z } from 'zod';
import { lastFew } from '#shared/last-few.ts';

/** Documents of one kind that stay read. */
const most = 200;

/**
 * Reads documents of one kind out of their rows, checked against their schema. A text that was read before gives the same value again:
 * while something is dragged the same venue, classes and bookings are read many times a second. What it gives is shared, not to be changed.
 */
export const documentReader = <Value>(schema: z.ZodType<Value>): ((text: string) => Value) => {
  const known = lastFew<Value>(most);
  return (text) => known(text, () => schema.parse(JSON.parse(text)));
};
