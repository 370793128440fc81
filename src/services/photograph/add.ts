import { createHash } from 'node:crypto';
import type { Answer, Problem } from '#shared/contract/failure.ts';
import { fromEpoch } from '#shared/calendar/local-time.ts';
import type { CameraNote, NewPhotograph, Photograph } from '#shared/vocabulary/photograph.ts';
import { done, invalid, notFound } from '#services/answers.ts';
import { zoneLetters } from '#services/zone-letters.ts';
import type { Service } from '#services/needs.ts';
import { bytesOf } from '#services/photograph/bytes.ts';
import type { Contents } from '#store/store.ts';

/** Keeps a photograph: its bytes untouched beside the workspace, and a small picture in it. The bytes are kept before they are named. */
export const addPhotograph: Service<'photograph/add'> = async (needs, { photograph, base64 }) => {
  const refused = await needs.store.read((contents) => check(photograph, contents));
  if (!refused.ok) return refused;
  const taken = bytesOf(base64);
  if (!taken.ok) return taken;
  const bytes = taken.value;
  const head = needs.photographs.examine(bytes);
  if (!head.ok) return invalid([{ field: 'base64', reason: head.reason }]);
  const thumbnail = await needs.compute('thumbnail', { bytes }, { urgent: true });
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  await needs.photographs.keep(sha256, head.mediaType, bytes);
  const camera = needs.photographs.cameraNote(bytes);
  const { fromCamera, ...entered } = photograph;
  const venue = await needs.store.read((contents) => contents.venues.find(photograph.venueId));
  const noted = fromCamera && camera && venue ? notedIn(camera, venue.place.timeZone) : {};
  const kept: Photograph = {
    id: `photograph-${needs.newId()}`,
    ...entered,
    ...noted,
    mediaType: head.mediaType,
    width: head.width,
    height: head.height,
    bytes: bytes.length,
    sha256,
    enteredAt: new Date(needs.now()).toISOString(),
    camera,
  };
  return needs.store.write(async (contents): Promise<Answer<Photograph>> => {
    const gone = await check(photograph, contents);
    if (!gone.ok) return gone;
    await contents.photographs.add(kept, thumbnail);
    return done(kept);
  });
};

/**
 * A camera's note as time and bearing of a photograph. With its offset the clock of the camera is turned to the venue's; without one it is
 * taken to have shown the venue's time.
 */
const notedIn = (
  { takenAt, offset, bearing }: CameraNote,
  timeZone: string,
): Partial<Pick<Photograph, 'takenAt' | 'bearing'>> => ({
  ...(takenAt === null
    ? {}
    : { takenAt: offset === null ? takenAt.slice(0, 16) : fromEpoch(Date.parse(`${takenAt}${offset}`), timeZone) }),
  ...(bearing === null ? {} : { bearing }),
});

const check = async (photograph: NewPhotograph, contents: Contents): Promise<Answer<null>> => {
  const venue = await contents.venues.find(photograph.venueId);
  if (!venue) return notFound('venue', photograph.venueId);
  const booking = photograph.bookingId === null ? null : await contents.bookings.find(photograph.bookingId);
  if (photograph.bookingId !== null && booking?.venueId !== venue.id) return notFound('booking', photograph.bookingId);
  const problems: Problem[] = [];
  if (photograph.zone !== null && !zoneLetters(venue, booking).has(photograph.zone))
    problems.push({ field: 'photograph.zone', reason: `there is no zone "${photograph.zone}"` });
  return problems.length > 0 ? invalid(problems) : done(null);
};
