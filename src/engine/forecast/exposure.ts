import type { Booking, Crowd, Incident, Layer, Traffic, ZoneUse } from '#shared/vocabulary/booking.ts';
import { incidentsOf } from '#engine/forecast/entered-incidents.ts';
import type { Period } from '#engine/forecast/period.ts';

/** What lies on a zone in one stretch of hours; hours are whole, from the beginning of the period. */
export interface CoveredStretch {
  readonly from: number;
  /** First hour in which it lies no more. */
  readonly until: number;
  readonly layer: Layer;
}

export interface CrowdVisit {
  readonly day: number;
  readonly hour: number;
  /** h */
  readonly hours: number;
  readonly use: ZoneUse;
  readonly crowd: Crowd;
}

export interface MachineVisit {
  readonly day: number;
  readonly hour: number;
  readonly pass: Traffic;
  /** m across the ground where it crosses, in steps. */
  readonly width: number;
  /** Whether it squeezes through a gate throat there. */
  readonly gate: boolean;
}

/** Something spilt, or ice on the turf itself, over a share of the zone. */
export interface IncidentVisit {
  readonly day: number;
  readonly hour: number;
  /** d that ice lies; 0 for a spill. */
  readonly days: number;
  /** Share of the zone's turf, 0–1. */
  readonly share: number;
  readonly incident: Incident;
}

/** Everything events do to one part of the turf. */
export interface Exposure {
  /** In the order of their hours; they never overlap. */
  readonly stretches: readonly CoveredStretch[];
  readonly crowds: readonly CrowdVisit[];
  readonly machines: readonly MachineVisit[];
  readonly incidents: readonly IncidentVisit[];
}

export const nothingHappens: Exposure = { stretches: [], crowds: [], machines: [], incidents: [] };

/**
 * The exposure of one zone of a booking.
 *
 * A layer covers every hour it lies in for any part: minutes are rounded against the turf, so that a later off is never better. Where
 * two layers share an hour because of the rounding, the later one has it; layers of the same covering that adjoin therefore count
 * exactly as one.
 * @param turf m² of turf in the zone; an incident is spread over it by its share
 * @param width m across the zone at this place; machines keep to it
 */
export const exposureOf = (booking: Booking, letter: string, period: Period, turf: number, width: number): Exposure => {
  const end = period.firstHour.at(-1)!;
  const within = (hour: number): boolean => hour >= 0 && hour < end;
  const use = booking.zones.find((zone) => zone.letter === letter)?.use ?? 'other';
  const layers = booking.layers.filter((layer) => layer.zone === letter).toSorted((a, b) => (a.on < b.on ? -1 : 1));
  return {
    stretches: followingOn(
      layers.map((layer) => ({
        from: Math.max(0, Math.floor(period.hourOf(layer.on))),
        until: Math.min(end, Math.ceil(period.hourOf(layer.off))),
        layer,
      })),
    ),
    crowds: booking.crowds
      .filter((crowd) => crowd.zone === letter)
      .map((crowd) => {
        const hour = period.hourOf(crowd.from);
        return { day: period.dayOf(crowd.from), hour: Math.floor(hour), hours: period.hourOf(crowd.until) - hour, use, crowd };
      })
      .filter((visit) => within(visit.hour)),
    machines: booking.traffic
      .filter((pass) => pass.zone === letter)
      .map((pass) => ({
        day: period.dayOf(pass.at),
        hour: Math.floor(period.hourOf(pass.at)),
        pass,
        width,
        gate: use === 'gate',
      }))
      .filter((visit) => within(visit.hour)),
    incidents: incidentsOf(booking)
      .filter((incident) => incident.zone === letter)
      .map((incident) => {
        const hour = period.hourOf(incident.at);
        const days = incident.until === null ? 0 : (period.hourOf(incident.until) - hour) / 24;
        const share = incident.area / Math.max(incident.area, turf);
        return { day: period.dayOf(incident.at), hour: Math.floor(hour), days, share, incident };
      })
      .filter((visit) => within(visit.hour)),
  };
};

/** The exposures of several events on the same ground as one. */
export const together = (exposures: readonly Exposure[]): Exposure =>
  exposures.length === 1
    ? exposures[0]!
    : {
        stretches: followingOn(exposures.flatMap((one) => one.stretches).toSorted((a, b) => a.from - b.from)),
        crowds: exposures.flatMap((one) => one.crowds),
        machines: exposures.flatMap((one) => one.machines),
        incidents: exposures.flatMap((one) => one.incidents),
      };

/** Cuts each stretch where the next begins, and drops what is then left without an hour. */
const followingOn = (stretches: readonly CoveredStretch[]): readonly CoveredStretch[] => {
  const cut: CoveredStretch[] = [];
  for (const stretch of stretches) {
    const before = cut.at(-1);
    if (before && before.until > stretch.from) {
      const rest = { ...before, from: stretch.until };
      cut[cut.length - 1] = { ...before, until: stretch.from };
      cut.push(stretch);
      if (rest.until > rest.from) cut.push(rest);
    } else cut.push(stretch);
  }
  return cut.filter((stretch) => stretch.until > stretch.from);
};

/** The stretch that lies at an hour, or null. */
export const lyingAt = (exposure: Exposure, hour: number): CoveredStretch | null =>
  exposure.stretches.find((stretch) => hour >= stretch.from && hour < stretch.until) ?? null;

/** Whole hours under anything, and those of them without any light. */
export const hoursUnder = (exposure: Exposure, dark: (stretch: CoveredStretch) => boolean): { covered: number; dark: number } =>
  exposure.stretches.reduce(
    (sum, stretch) => ({
      covered: sum.covered + stretch.until - stretch.from,
      dark: sum.dark + (dark(stretch) ? stretch.until - stretch.from : 0),
    }),
    { covered: 0, dark: 0 },
  );
