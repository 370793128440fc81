import { invalid, outOfRange, storedAnswer } from '#services/answers.ts';
import { checkVenue } from '#services/checks/venue.ts';
import type { Service } from '#services/needs.ts';

export const saveVenue: Service<'venue/save'> = async ({ store }, { venue }) => {
  const found = checkVenue(venue, 'venue');
  if (found.invalid.length > 0) return invalid(found.invalid);
  if (found.outOfRange.length > 0) return outOfRange(found.outOfRange);
  return store.write(async (contents) => storedAnswer(await contents.venues.save(venue), 'venue', venue.id, venue.revision));
};
