import { fromEpoch } from '#shared/calendar/local-time.ts';
import type { LocalTime } from '#shared/vocabulary/primitives.ts';
import * as told from '#shared/wording/moments.ts';
import { deskNow } from './desk.ts';

/** Now, on the wall clock of the venue on the sheet. */
export const nowAtVenue = (): LocalTime => fromEpoch(Date.now(), deskNow().venue?.place.timeZone ?? 'UTC');

/** "Sat 31 Jul 15:00", by the clock the reader chose. */
export const momentWords = (time: LocalTime): string => told.momentWords(time, deskNow().clock);

/** "Sat 31 Jul 2027 15:00", by the clock the reader chose. */
export const fullMoment = (time: LocalTime): string => told.fullMoment(time, deskNow().clock);
