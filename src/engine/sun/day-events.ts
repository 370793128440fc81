import { Body, MakeTime, Observer, SearchAltitude, SearchHourAngle } from 'astronomy-engine';
import type { AstroTime } from 'astronomy-engine';
import { localDayBounds } from '#engine/sun/local-day.ts';
import { sunPosition } from '#engine/sun/position.ts';

/**
 * Rise, noon and set of a day of the venue's own calendar. Tables give rise and set for the sea-level horizon with the middle
 * of the disc at −0.8333°, so the elevation of the venue plays no part. The search runs from local midnight to local
 * midnight: an event of the UTC day would be that of the evening before at places west of Greenwich.
 * @source reda-andreas-2004
 */
export type SunDay = {
  /** First rise in the day, UTC epoch milliseconds; null where there is none. */
  readonly rise: number | null;
  /** Last set in the day; null where there is none. */
  readonly set: number | null;
  /** The sun crosses the meridian. */
  readonly transit: number;
  /** Hours of the local day with the sun above that altitude. */
  readonly dayLength: number;
  readonly kind: 'rises and sets' | 'up all day' | 'down all day';
};

/** Altitude of the middle of the disc at rise and set, °: 0.5667 of refraction and 0.2667 of half a disc. */
export const riseSetAltitude = -0.8333;

const hourMs = 3_600_000;

/**
 * @param date day of the venue's calendar, `YYYY-MM-DD`
 * @param place ° north, ° east, IANA zone
 * @param altitude ° of the middle of the disc at rise and set
 */
export const sunDay = (
  date: string,
  place: { readonly latitude: number; readonly longitude: number; readonly timeZone: string },
  altitude: number = riseSetAltitude,
): SunDay => {
  const { start, end } = localDayBounds(date, place.timeZone);
  const observer = new Observer(place.latitude, place.longitude, 0);
  const every = (direction: 1 | -1): number[] => {
    const found: number[] = [];
    for (let from = start; from < end;) {
      const event: AstroTime | null = SearchAltitude(
        Body.Sun,
        observer,
        direction,
        MakeTime(new Date(from)),
        (end - from) / 86_400_000,
        altitude, // prettier-ignore
      );
      if (event === null || event.date.getTime() >= end) break;
      found.push(event.date.getTime());
      from = event.date.getTime() + hourMs / 60;
    }
    return found;
  };
  const rises = every(1);
  const sets = every(-1);
  const transit = SearchHourAngle(Body.Sun, observer, 0, MakeTime(new Date(start)), 1).time.date.getTime();
  const upAtStart = sunPosition(start, { latitude: place.latitude, longitude: place.longitude }).altitude > altitude;
  const changes = [...rises.map((at) => ({ at, up: true })), ...sets.map((at) => ({ at, up: false }))].sort(
    (a, b) => a.at - b.at,
  );
  let up = upAtStart;
  let from = start;
  let lit = 0;
  for (const change of [...changes, { at: end, up: false }]) {
    if (up) lit += change.at - from;
    from = change.at;
    up = change.up;
  }
  return {
    rise: rises[0] ?? null,
    set: sets.at(-1) ?? null,
    transit,
    dayLength: lit / hourMs,
    kind: changes.length > 0 ? 'rises and sets' : upAtStart ? 'up all day' : 'down all day',
  };
};
