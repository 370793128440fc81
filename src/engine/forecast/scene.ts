import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';
import type { Vehicle } from '#shared/vocabulary/vehicle.ts';
import { exposureOf, nothingHappens, together, type Exposure } from '#engine/forecast/exposure.ts';
import { firstOn, lastOff, periodOf, type Period } from '#engine/forecast/period.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { zoneCells, type ForecastZone } from '#engine/forecast/zones.ts';
import { assignZones, type Cells } from '#engine/ground/cells.ts';
import { rigReaches, type RigReach } from '#engine/light/grow-lights.ts';
import { skyKeeper } from '#engine/forecast/sky-of.ts';
import type { DayShape } from '#engine/sky/day-shape.ts';
import { bowlKeeper } from '#engine/stands/bowl.ts';
import { localWidth, steppedWidth } from '#engine/loads/way-width.ts';
import type { ClassLight } from '#engine/stands/shade-classes.ts';

/** Cells that share their zone, their shade and everything that happens to them: reckoned once for all of them. */
export interface Group {
  /** Index into the zones. */
  readonly zone: number;
  /** Class of shade. */
  readonly shade: number;
  /** Indexes of the rigs of lamps that reach it. */
  readonly rigs: readonly number[];
  /** m² */
  readonly area: number;
  readonly exposure: Exposure;
}

/** A question made ready: everything that is the same for every member. */
export interface Scene {
  readonly question: ForecastQuestion;
  readonly period: Period;
  readonly cells: Cells;
  readonly zones: readonly ForecastZone[];
  /** m² by zone. */
  readonly zoneArea: Float64Array;
  readonly zoneOf: Int16Array;
  readonly groups: readonly Group[];
  readonly groupOf: Int16Array;
  /** One per day of the period. */
  readonly shapes: readonly DayShape[];
  readonly light: ClassLight;
  readonly rigs: readonly RigReach[];
  readonly coverings: ReadonlyMap<string, Covering>;
  readonly vehicles: ReadonlyMap<string, Vehicle>;
  /** First and last hour with anything lying on the turf; null where nothing ever does. */
  readonly coveredHours: { readonly from: number; readonly until: number } | null;
  /** Days with play that wears the turf, and how many studded events each counts as. */
  readonly play: readonly { readonly day: number; readonly games: number }[];
}

const bowls = bowlKeeper();
const skies = skyKeeper();

/**
 * Prepares a question.
 * @throws RangeError with field and reason where the question contradicts itself
 */
export const sceneOf = (question: ForecastQuestion): Scene => {
  const { venue, booking, others, parameters } = question;
  const events = [...(booking ? [booking] : []), ...others];
  const period = periodOf(question.begin ?? earliest(events), question.homeDate.start, venue.place.timeZone);
  const bowl = bowls(venue.field, venue.stands, { cellSize: question.cellSize, bins: 72 });
  const { zones, zoneOf } = zoneCells(bowl.cells, venue, booking);
  const { shapes, shade, light } = skies(bowl, venue.place, period.days, parameters);
  const rigs = rigReaches(bowl.cells, venue.lights);
  const { groups, groupOf } = groupCells(bowl.cells, zones, zoneOf, shade.of, rigs, exposureFinder(events, period, bowl.cells));
  const zoneArea = new Float64Array(zones.length);
  for (const group of groups) zoneArea[group.zone]! += group.area;
  const stretches = groups.flatMap((group) => group.exposure.stretches);
  return {
    question,
    period,
    cells: bowl.cells,
    zones,
    zoneArea,
    zoneOf,
    groups,
    groupOf,
    shapes,
    light,
    rigs,
    coverings: new Map(question.coverings.map((covering) => [covering.id, covering])),
    vehicles: new Map(question.vehicles.map((vehicle) => [vehicle.id, vehicle])),
    coveredHours:
      stretches.length === 0
        ? null
        : { from: Math.min(...stretches.map((one) => one.from)), until: Math.max(...stretches.map((one) => one.until)) },
    play: playBetween(question, period),
  };
};

const earliest = (events: readonly Booking[]): string | null =>
  events
    .map(firstOn)
    .reduce<string | null>((least, time) => (time !== null && (least === null || time < least) ? time : least), null);

/** For a cell, which zone of each event it lies in, and the exposure of such a choice. */
const exposureFinder = (events: readonly Booking[], period: Period, cells: Cells) => {
  const zoneOf = events.map((event) =>
    assignZones(
      cells,
      event.zones.map((zone) => zone.outline),
    ),
  );
  const turfOf = events.map((event, at) => {
    const turf = new Float64Array(event.zones.length);
    for (let cell = 0; cell < cells.count; cell++) {
      const zone = zoneOf[at]![cell]!;
      if (zone >= 0) turf[zone]! += cells.area[cell]!;
    }
    return turf;
  });
  const widthAt = events.map((event) => widthFinder(event, cells));
  const known = new Map<string, Exposure>();
  return (cell: number): { key: string; exposure: Exposure } => {
    const widths = zoneOf.map((of, at) => (of[cell]! < 0 ? 0 : widthAt[at]!(of[cell]!, cell)));
    const key = `${zoneOf.map((of) => of[cell]).join()} ${widths.join()}`;
    let exposure = known.get(key);
    if (exposure === undefined) {
      const hit = events.flatMap((event, at) => {
        const zone = zoneOf[at]![cell]!;
        return zone < 0 ? [] : [exposureOf(event, event.zones[zone]!.letter, period, turfOf[at]![zone]!, widths[at]!)];
      });
      exposure = hit.length === 0 ? nothingHappens : together(hit);
      known.set(key, exposure);
    }
    return { key, exposure };
  };
};

/** m across a zone of an event at a cell, in steps, where machines cross it; 0 where none do, so that its cells stay one group. */
const widthFinder = ({ zones, traffic }: Booking, cells: Cells) => {
  const crossed = zones.map(({ letter }) => traffic.some((pass) => pass.zone === letter));
  return (zone: number, cell: number): number =>
    crossed[zone]! ? steppedWidth(localWidth(zones[zone]!.outline, cells.x[cell]!, cells.y[cell]!)) : 0;
};

const groupCells = (
  cells: Cells,
  zones: readonly ForecastZone[],
  zoneOf: Int16Array,
  shadeOf: Int16Array,
  rigs: readonly RigReach[],
  exposureAt: (cell: number) => { key: string; exposure: Exposure },
) => {
  const lamps: number[][] = Array.from({ length: cells.count }, () => []);
  rigs.forEach((rig, at) => rig.cells.forEach((cell) => lamps[cell]!.push(at)));
  const groups: (Group & { area: number })[] = [];
  const known = new Map<string, number>();
  const groupOf = new Int16Array(cells.count);
  for (let cell = 0; cell < cells.count; cell++) {
    const { key, exposure } = exposureAt(cell);
    const name = `${zoneOf[cell]} ${shadeOf[cell]} ${lamps[cell]!.join()} ${key}`;
    let index = known.get(name);
    if (index === undefined) {
      index = groups.length;
      known.set(name, index);
      groups.push({ zone: zoneOf[cell]!, shade: shadeOf[cell]!, rigs: lamps[cell]!, area: 0, exposure });
    }
    groups[index] = { ...groups[index]!, area: groups[index]!.area + cells.area[cell]! };
    groupOf[cell] = index;
  }
  if (zones.length === 0) throw new RangeError('venue.field.outline: holds no turf');
  return { groups, groupOf };
};

/** Home dates and practices after the event is over and before the home date that counts. Without an event nothing is added. */
const playBetween = ({ booking, fixtures, homeDate, parameters }: ForecastQuestion, period: Period) => {
  const over = booking && lastOff(booking);
  if (!over) return [];
  return fixtures
    .filter(
      (fixture) =>
        fixture.kind !== 'blackout' && fixture.id !== homeDate.id && fixture.start >= over && fixture.start < homeDate.start,
    )
    .map((fixture) => ({
      day: period.dayOf(fixture.start),
      games: parameters[fixture.kind === 'home-date' ? 'play.homeDate' : 'play.practice'],
    }));
};
