import type { Venue } from '#shared/vocabulary/venue.ts';

/** What is drawn of a venue: the edge of its turf, its lines, its standing zones and its stands. */
export type Ground = Pick<Venue['field'], 'outline' | 'lines'> & Pick<Venue, 'zones' | 'stands'>;

export const groundOf = ({ field, zones, stands }: Venue): Ground => ({
  outline: field.outline,
  lines: field.lines,
  zones,
  stands,
});

export const withGround = (venue: Venue, { outline, lines, zones, stands }: Ground): Venue => {
  const { lines: _old, ...field } = venue.field;
  return { ...venue, field: { ...field, outline, ...(lines && { lines }) }, zones, stands };
};
