import type { Venue } from '#shared/vocabulary/venue.ts';

/** What is drawn of a venue: the edge of its turf, its lines, its standing zones and its stands. */
export type Ground = Pick<Venue['field'], 'outline' | 'lines'> & Pick<Venue, 'zones' | 'stands'>;

const grounds = new WeakMap<Venue, Ground>();

/** The ground of a venue; of the same venue always the same object, so that what is worked out from it need not be worked out again. */
export const groundOf = (venue: Venue): Ground => {
  const known = grounds.get(venue);
  if (known) return known;
  const { field, zones, stands } = venue;
  const ground = { outline: field.outline, lines: field.lines, zones, stands };
  grounds.set(venue, ground);
  return ground;
};

export const withGround = (venue: Venue, { outline, lines, zones, stands }: Ground): Venue => {
  const { lines: _old, ...field } = venue.field;
  return { ...venue, field: { ...field, outline, ...(lines && { lines }) }, zones, stands };
};
