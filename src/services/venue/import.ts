import type { Service } from '#services/needs.ts';
import { takeIn } from '#services/venue/take-in.ts';

export const importVenue: Service<'venue/import'> = ({ store }, { document }) =>
  store.write((contents) => takeIn(contents, document, 'document'));
