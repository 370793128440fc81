import { seasonOf } from '#shared/vocabulary/turf.ts';
import { lyingAt, type CoveredStretch } from '#engine/forecast/exposure.ts';
import { coveringOf, type GroundLoads } from '#engine/forecast/ground-loads.ts';
import { fillSun, type Member, type Window } from '#engine/forecast/member.ts';
import type { Group, Scene } from '#engine/forecast/scene.ts';
import { runClimate, startClimate, straightProfile, openClimate, type Climate } from '#engine/heat/climate.ts';
import { climateSettings, type ClimateSettings } from '#engine/heat/climate-settings.ts';
import { layOut, uncovered, type Floor, type FloorCare } from '#engine/heat/floor.ts';
import { pitchGround } from '#engine/heat/pitch-ground.ts';
import { causes } from '#engine/injury/causes.ts';
import {
  frostOdds,
  frostTolerance,
  halfKillTemperature,
  hardeningAt,
  keptAfterFrost,
  type FrostTolerance,
} from '#engine/injury/frost.ts';
import { keptAfterHeat, type HeatTolerance } from '#engine/injury/heat-dose.ts';
import { waterloggingTraitsOf } from '#engine/injury/injury-traits.ts';
import { reserveGain, reserveLoss } from '#engine/injury/reserve-balance.ts';
import { crownsKeptWet, leafKeptWet, oxygenDebt, type WaterloggingTraits } from '#engine/injury/waterlogging.ts';
import { lightThrough } from '#engine/light/under-covering.ts';
import { advanceDays, type DayTrack } from '#engine/recovery/advance-days.ts';
import { injureAt } from '#engine/recovery/injure.ts';
import { driverLayout, driverStride, standLayout, standStride } from '#engine/recovery/stand-layout.ts';
import { standOf, writeStand } from '#engine/recovery/stand.ts';
import { drainedState, rootZoneWaterContent } from '#engine/water/root-zone.ts';
import { rootZoneProfile, type RootZoneProfile } from '#engine/water/root-zone-profile.ts';
import {
  evaporationUnderCovering,
  rootZoneCourse,
  type IrrigationSchedule,
  type RootZoneCourse,
} from '#engine/water/root-zone-course.ts';
import { crowdFootfalls } from '#engine/wear/crowd-footfalls.ts';
import { wearKept, type WearExposure, type WearSettings } from '#engine/wear/wear-kept.ts';
import { wearSettings } from '#engine/wear/wear-settings.ts';

const HEAT = causes.indexOf('heat');
const FROST = causes.indexOf('frost');
const WEAR = causes.indexOf('wear');
const LOAD = causes.indexOf('load');
const WETNESS = causes.indexOf('wetness');

/** A floor of a group ready for the solver, with what the turf gets through it. */
interface LaidFloor {
  readonly stretch: CoveredStretch;
  readonly floor: Floor;
  /** Share of light that reaches the turf. */
  readonly light: number;
  readonly seal: number;
  /** Hours after laying in which a lift opens a share of the zone. */
  readonly lifts: readonly { readonly from: number; readonly until: number; readonly share: number }[];
}

/** Work space and everything reckoned once for a scene: floors by group, the soil column, the loads. */
export interface Workshop {
  readonly scene: Scene;
  readonly window: Window;
  readonly loads: GroundLoads;
  readonly settings: ClimateSettings;
  readonly climate: Climate;
  readonly bare: readonly Floor[];
  readonly floors: readonly (readonly LaidFloor[])[];
  readonly profile: RootZoneProfile;
  readonly irrigation: IrrigationSchedule;
  readonly deepTemperature: number;
  readonly crown: Float64Array;
  readonly drivers: Float64Array;
  readonly stand: Float64Array;
}

export const workshop = (scene: Scene, window: Window, loads: GroundLoads): Workshop => {
  const { parameters, venue } = scene.question;
  const { climate: normals, field } = venue;
  const deepTemperature = normals.maximum.reduce((sum, high, month) => sum + (high + normals.minimum[month]!) / 2, 0) / 12;
  const profile = rootZoneProfile(field.rootZone, seasonOf(field.sward[0]!.grass), parameters);
  const settings = climateSettings(parameters);
  const ground = pitchGround(field.rootZone, rootZoneWaterContent(profile, drainedState(profile)), deepTemperature, parameters);
  return {
    scene,
    window,
    loads,
    settings,
    climate: openClimate(ground, settings),
    bare: Array.from(scene.light.sky, (skyView) => layOut({ ...uncovered, skyView }, ground, settings)),
    floors: scene.groups.map((group) =>
      group.exposure.stretches.map((stretch) => {
        const covering = coveringOf(scene, stretch)!;
        const { layer } = stretch;
        const care = careOf(scene, stretch);
        const floor = layOut(
          {
            stack: [covering],
            loading: layer.loading,
            cleanliness: layer.cleanliness,
            iceTemperature: layer.iceTemperature,
            care,
            steps: stretch.until - stretch.from,
            skyView: scene.light.sky[group.shade]!,
          },
          ground,
          settings,
        );
        const lifts = care.filter((act) => act.kind === 'lift');
        return {
          stretch,
          floor,
          light: lightThrough(covering.lightTransmission, layer.cleanliness, layer.loading),
          seal: covering.seal,
          lifts,
        };
      }),
    ),
    profile,
    irrigation: { kind: 'refill', target: parameters['water.irrigation.target'], limit: parameters['water.irrigation.limit'] },
    deepTemperature,
    crown: new Float64Array(window.hours),
    drivers: new Float64Array(scene.period.days.length * driverStride),
    stand: new Float64Array(standStride),
  };
};

/** The care of a layer in whole hours after it was laid; what lies outside its hours is cut off. */
const careOf = ({ period }: Scene, { from, until, layer }: CoveredStretch): FloorCare[] =>
  layer.care
    .map((care) => ({
      kind: care.kind,
      from: Math.max(0, Math.round(period.hourOf(care.from)) - from),
      until: Math.min(until - from, Math.round(period.hourOf(care.until)) - from),
      share: care.share,
    }))
    .filter((care) => care.until > care.from);

/** What a member's values make of injuries. */
export interface Tolerances {
  readonly heat: HeatTolerance;
  readonly doseMemory: number;
  readonly frost: FrostTolerance;
  /** °C that kills half, by hardening 0 and 1. */
  readonly tender: number;
  readonly hardened: number;
  readonly wet: WaterloggingTraits;
  readonly wear: WearSettings;
}

export const tolerancesOf = (scene: Scene, { values }: Member): Tolerances => {
  const { sward } = scene.question.venue.field;
  const mean = (of: (grass: (typeof sward)[number]['grass']) => number): number =>
    sward.reduce((sum, part) => sum + part.share * of(part.grass), 0);
  return {
    heat: {
      halfKill: mean((grass) => values[`heat.halfKill.${seasonOf(grass)}`]),
      decade: values['heat.decade'],
      steepness: values['heat.doseSteepness'],
    },
    doseMemory: values['forecast.doseMemory'],
    frost: frostTolerance(values),
    tender: mean((grass) => halfKillTemperature(grass, 0, values)),
    hardened: mean((grass) => halfKillTemperature(grass, 1, values)),
    wet: waterloggingTraitsOf(values),
    wear: wearSettings(values),
  };
};

/** What one group leaves behind besides its daily track. */
export interface CourseNotes {
  /** °C at the crowns while covered. */
  crownSum: number;
  crownHours: number;
  crownHighest: number;
  /** Light that reached the turf while covered, mol/m², and the days that make it up. */
  lightSum: number;
  lightDays: number;
  /** kPa */
  pressure: number;
  footfalls: number;
  /** Logarithm of leaf lost by cause at the end of every day, at [day·causes + cause]; null when nobody asks. */
  lost: Float64Array | null;
}

export const blankNotes = (days: number | null): CourseNotes => ({
  crownSum: 0,
  crownHours: 0,
  crownHighest: -Infinity,
  lightSum: 0,
  lightDays: 0,
  pressure: 0,
  footfalls: 0,
  lost: days === null ? null : new Float64Array(days * causes.length),
});

/** A stand to be kept as it is on one evening. */
export interface Snapshot {
  readonly day: number;
  readonly into: Float64Array;
}

/** Where a group's days are written, one number a day. */
export interface CourseTrack extends DayTrack {
  readonly ruts: Float32Array;
  readonly density: Float32Array;
}

/**
 * The course of one group in one member, day by day. On each day: what machines, legs and feet do; then, while it is covered, heat,
 * frost and want of air hour by hour; then the reserve and growth of the day.
 */
export const runCourse = (
  shop: Workshop,
  at: number,
  member: Member,
  tolerances: Tolerances,
  water: RootZoneCourse,
  track: CourseTrack,
  notes: CourseNotes,
  keep: Snapshot | null = null,
): void => {
  const { scene, stand, drivers } = shop;
  const group = scene.groups[at]!;
  const { field } = scene.question.venue;
  const days = scene.period.days.length;
  const covered = crownsUnderFloors(shop, at, member);
  fillDrivers(shop, at, member, notes);
  writeStand(stand, 0, standOf(field.usual, shop.loads.ground.bulkDensity, member.values['nitrogen.usual']));
  const injuries = new InjuryState(tolerances);
  let day = 0;
  while (day < days) {
    const busy = isBusy(shop, group, day, covered);
    let until = day + 1;
    const stop = keep !== null && keep.day >= day ? keep.day + 1 : days;
    if (!busy) while (until < stop && !isBusy(shop, group, until, covered) && notes.lost === null) until++;
    if (busy) {
      press(shop, group, day, water, tolerances, notes);
      tread(shop, group, day, water, tolerances, notes);
      if (covered && covered.firstDay <= day && day <= covered.lastDay) suffer(shop, at, day, member, water, injuries);
    }
    if (!covered || day > covered.lastDay) injuries.rest(until - day);
    advanceDays(stand, 0, drivers, day, until - day, member.traits, track, day);
    for (let d = day; d < until; d++) {
      track.ruts[d] = stand[standLayout.ruts]!;
      track.density[d] = stand[standLayout.bulkDensity]!;
    }
    if (keep !== null && until - 1 === keep.day) keep.into.set(stand);
    if (notes.lost)
      for (let cause = 0; cause < causes.length; cause++)
        notes.lost[day * causes.length + cause] = stand[standLayout.leafLost + cause]!;
    day = until;
  }
};

interface CoveredDays {
  readonly firstDay: number;
  readonly lastDay: number;
}

const isBusy = ({ scene }: Workshop, group: Group, day: number, covered: CoveredDays | null): boolean =>
  (covered !== null && day >= covered.firstDay && day <= covered.lastDay) ||
  group.exposure.crowds.some((visit) => visit.day === day) ||
  group.exposure.machines.some((visit) => visit.day === day) ||
  scene.play.some((game) => game.day === day);

/** Runs the soil column through the floors of a group; leaves the crowns' temperature by hour of the window in `crown`. */
const crownsUnderFloors = (shop: Workshop, at: number, member: Member): CoveredDays | null => {
  const { scene, window, climate, crown } = shop;
  const floors = shop.floors[at]!;
  if (floors.length === 0) return null;
  const { shade } = scene.groups[at]!;
  const from = Math.max(0, floors[0]!.stretch.from - window.from - scene.question.parameters['forecast.spinUp']);
  const end = floors.at(-1)!.stretch.until - window.from;
  fillSun(scene, window, member, shade, from, end);
  startClimate(climate, straightProfile(climate.ground, member.hours.air[from]!, shop.deepTemperature));
  let hour = from;
  for (const { stretch, floor } of floors) {
    const start = stretch.from - window.from;
    if (start > hour) runClimate(climate, shop.bare[shade]!, member.hours, hour, start, crown, 1);
    hour = stretch.until - window.from;
    runClimate(climate, floor, member.hours, start, hour, crown, 1);
  }
  const { firstHour } = scene.period;
  return {
    firstDay: dayOfHour(firstHour, floors[0]!.stretch.from),
    lastDay: dayOfHour(firstHour, floors.at(-1)!.stretch.until - 1),
  };
};

const dayOfHour = (firstHour: Int32Array, hour: number): number => {
  let day = 0;
  while (firstHour[day + 1]! <= hour) day++;
  return day;
};

const liftedAt = (laid: LaidFloor, hour: number): number =>
  laid.lifts.reduce(
    (most, lift) =>
      hour - laid.stretch.from >= lift.from && hour - laid.stretch.from < lift.until ? Math.max(most, lift.share) : most,
    0,
  );

/**
 * Change of the reserve on an open day, 1/d; never below 0. Turf in the open holds its store: a venue whose turf starves where nothing
 * lies on it says so in its usual state.
 */
export const openReserveChange = ({ air, traits }: Member, day: number, light: number): number =>
  Math.max(0, reserveGain(light, air[day]!, traits.reserve) - reserveLoss(air[day]!, 0, traits.reserve));

/**
 * The days of a group as the turf meets them. Covered days sum the reserve hour by hour at the temperature of the crowns; growth keeps to
 * the mean air temperature on every day, as the growth potential is defined.
 */
const fillDrivers = (shop: Workshop, at: number, member: Member, notes: CourseNotes): void => {
  const { scene, drivers, window, crown } = shop;
  const { period, light, rigs } = scene;
  const group = scene.groups[at]!;
  const floors = shop.floors[at]!;
  const days = period.days.length;
  const { values, traits } = member;
  for (let day = 0; day < days; day++) {
    const now = day * driverStride;
    let lamps = 0;
    for (const rig of group.rigs)
      if (rigs[rig]!.rig.from <= period.days[day]! && period.days[day]! <= rigs[rig]!.rig.until) lamps += rigs[rig]!.light;
    drivers[now + driverLayout.temperature] = member.air[day]!;
    drivers[now + driverLayout.soilTemperature] = member.soil[day]!;
    drivers[now + driverLayout.light] = member.useful[group.shade * days + day]! + lamps;
    drivers[now + driverLayout.seal] = 0;
    drivers[now + driverLayout.covered] = 0;
    drivers[now + driverLayout.watered] = 1;
    drivers[now + driverLayout.reserveChange] = openReserveChange(member, day, drivers[now + driverLayout.light]!);
  }
  if (floors.length === 0) return;
  const perMegajoule = values['light.molPerMegajoule'];
  const first = dayOfHour(period.firstHour, floors[0]!.stretch.from);
  const last = dayOfHour(period.firstHour, floors.at(-1)!.stretch.until - 1);
  let next = 0;
  for (let day = first; day <= last; day++) {
    const start = period.firstHour[day]!;
    const end = period.firstHour[day + 1]!;
    const now = day * driverStride;
    const open = drivers[now + driverLayout.light]!;
    let whole = 0;
    let received = 0;
    let coveredHours = 0;
    for (let hour = start; hour < end; hour++) {
      while (next < floors.length && floors[next]!.stretch.until <= hour) next++;
      const laid = next < floors.length && floors[next]!.stretch.from <= hour ? floors[next]! : null;
      const here = hour - window.from;
      const share =
        light.beam[(day * light.classes + group.shade) * 24 + Math.min(23, Math.floor(((hour - start) * 24) / (end - start)))]!;
      const arrives = (member.beam[here]! * share + member.diffuse[here]! * light.sky[group.shade]!) * perMegajoule;
      whole += arrives;
      const lifted = laid ? liftedAt(laid, hour) : 1;
      received += arrives * (laid ? lifted + (1 - lifted) * laid.light : 1);
      const temperature = laid ? crown[here]! : member.hours.air[here]!;
      if (laid) {
        coveredHours++;
        notes.crownSum += temperature;
        notes.crownHours++;
        notes.crownHighest = Math.max(notes.crownHighest, temperature);
      }
    }
    if (coveredHours === 0) continue;
    // Light above what a leaf can use is cut off by the same share as in the open.
    const useful = whole > 0 ? open * (received / whole) : 0;
    let change = 0;
    let later = floorFrom(floors, start);
    for (let hour = start; hour < end; hour++) {
      while (later < floors.length && floors[later]!.stretch.until <= hour) later++;
      const laid = later < floors.length && floors[later]!.stretch.from <= hour ? floors[later]! : null;
      const temperature = laid ? crown[hour - window.from]! : member.hours.air[hour - window.from]!;
      const seal = laid ? laid.seal * (1 - liftedAt(laid, hour)) : 0;
      change += reserveGain(useful, temperature, traits.reserve) - reserveLoss(temperature, seal, traits.reserve);
    }
    drivers[now + driverLayout.light] = useful;
    drivers[now + driverLayout.covered] = coveredHours / (end - start);
    drivers[now + driverLayout.reserveChange] = change / 24;
    notes.lightSum += useful * (coveredHours / (end - start));
    notes.lightDays += coveredHours / (end - start);
  }
};

const floorFrom = (floors: readonly LaidFloor[], hour: number): number => {
  let index = 0;
  while (index < floors.length && floors[index]!.stretch.until <= hour) index++;
  return index;
};

/** Machines that come on a day and legs that are set down: ruts, density, torn and crushed turf. */
const press = (
  shop: Workshop,
  group: Group,
  day: number,
  water: RootZoneCourse,
  tolerances: Tolerances,
  notes: CourseNotes,
): void => {
  const { scene, stand, loads } = shop;
  const { firstHour } = scene.period;
  const place = placeOf(scene, water, day);
  for (const visit of group.exposure.machines) {
    if (visit.day !== day) continue;
    const { impact, touched, wearThrough } = loads.wheels(group, visit, place.water);
    const kept = wearKept(
      { ...nothing, wearThrough, wheels: { passes: impact.wheelPasses, rut: impact.rut, touched } },
      place,
      tolerances.wear,
    );
    firm(shop, impact.bulkDensity, touched, impact.rut);
    notes.pressure = Math.max(notes.pressure, impact.peakPressure);
    injureAt(stand, 0, LOAD, kept.leaf, kept.crowns);
  }
  for (const stretch of group.exposure.stretches) {
    if (stretch.from < firstHour[day]! || stretch.from >= firstHour[day + 1]!) continue;
    const impact = loads.standing(stretch, place.water);
    if (!impact) continue;
    const kept = wearKept(
      { ...nothing, legs: { load: impact.peak / impact.strength, pressed: impact.pressed } },
      place,
      tolerances.wear,
    );
    firm(shop, impact.bulkDensity, impact.pressed, impact.rut);
    notes.pressure = Math.max(notes.pressure, impact.peak);
    injureAt(stand, 0, LOAD, kept.leaf, kept.crowns);
  }
};

const nothing: WearExposure = { footfalls: 0, shoe: 'ordinary', games: 0, wearThrough: 1, wheels: null, legs: null };

/** Density of the mean of the group; the deepest rut, since that is what a foot finds. */
const firm = ({ stand, loads }: Workshop, density: number, share: number, rut: number): void => {
  const now = stand[standLayout.bulkDensity]!;
  stand[standLayout.bulkDensity] = now + share * Math.max(0, density - loads.ground.bulkDensity);
  stand[standLayout.ruts] = Math.max(stand[standLayout.ruts]!, rut);
};

/** Crowds of a day, and play on it. */
const tread = (
  shop: Workshop,
  group: Group,
  day: number,
  water: RootZoneCourse,
  tolerances: Tolerances,
  notes: CourseNotes,
): void => {
  const { scene, stand } = shop;
  const place = placeOf(scene, water, day);
  for (const visit of group.exposure.crowds) {
    if (visit.day !== day) continue;
    const covering = coveringOf(scene, lyingAt(group.exposure, visit.hour));
    const { density, activity } = visit.crowd;
    const footfalls = crowdFootfalls(density, visit.hours, activity, visit.use, tolerances.wear);
    const wearThrough = covering?.wearThrough ?? 1;
    const kept = wearKept(
      { ...nothing, footfalls, wearThrough, shoe: activity === 'working' ? 'boots' : 'ordinary' },
      place,
      tolerances.wear,
    );
    notes.footfalls += footfalls;
    injureAt(stand, 0, WEAR, kept.leaf, kept.crowns);
  }
  for (const game of scene.play) {
    if (game.day !== day) continue;
    const kept = wearKept({ ...nothing, games: game.games }, place, tolerances.wear);
    injureAt(stand, 0, WEAR, kept.leaf, kept.crowns);
  }
};

const placeOf = (scene: Scene, water: RootZoneCourse, day: number) => ({
  sward: scene.question.venue.field.sward,
  soil: scene.question.venue.field.rootZone.soil,
  water: water.top[day]!,
});

/** Doses that build up over a covering. */
class InjuryState {
  readonly tolerances: Tolerances;
  heatDose = 0;
  frostOdds = 0;
  oxygenDebt = 0;
  constructor(tolerances: Tolerances) {
    this.tolerances = tolerances;
  }
  /** Open days: what did not kill is slowly forgotten. */
  rest(days: number): void {
    const left = Math.exp(-days / this.tolerances.doseMemory);
    this.heatDose *= left;
    this.frostOdds *= left;
    this.oxygenDebt *= left;
  }
}

/** Heat, frost and want of air of one covered day. */
const suffer = (shop: Workshop, at: number, day: number, member: Member, water: RootZoneCourse, state: InjuryState): void => {
  const { scene, window, crown, stand } = shop;
  const { firstHour } = scene.period;
  const { tolerances } = state;
  const [start, end] = [firstHour[day]!, firstHour[day + 1]!];
  const beforeHeat = keptAfterHeat(state.heatDose, tolerances.heat);
  const beforeFrost = keptAfterFrost(state.frostOdds);
  const [beforeLeaf, beforeCrowns] = [
    leafKeptWet(state.oxygenDebt, tolerances.wet),
    crownsKeptWet(state.oxygenDebt, tolerances.wet),
  ];
  const rate = Math.LN10 / tolerances.heat.decade;
  const hardening = hardeningAt(member.soil[day]!, member.values);
  const halfKill = tolerances.tender + (tolerances.hardened - tolerances.tender) * hardening;
  const airFilled = water.airless[day] ? 0 : tolerances.wet.airLimit;
  for (const laid of shop.floors[at]!) {
    const from = Math.max(start, laid.stretch.from);
    const until = Math.min(end, laid.stretch.until);
    for (let hour = from; hour < until; hour++) {
      const temperature = crown[hour - window.from]!;
      state.heatDose += Math.exp((temperature - tolerances.heat.halfKill) * rate) / 96;
      state.frostOdds = frostOdds(state.frostOdds, temperature, 1, halfKill, tolerances.frost);
    }
    if (until > from && airFilled < tolerances.wet.airLimit)
      state.oxygenDebt += oxygenDebt(until - from, airFilled, laid.seal, member.soil[day]!, tolerances.wet);
  }
  const heat = keptAfterHeat(state.heatDose, tolerances.heat) / beforeHeat;
  injureAt(stand, 0, HEAT, heat, heat);
  const frost = keptAfterFrost(state.frostOdds) / beforeFrost;
  injureAt(stand, 0, FROST, frost, frost);
  injureAt(
    stand,
    0,
    WETNESS,
    leafKeptWet(state.oxygenDebt, tolerances.wet) / beforeLeaf,
    crownsKeptWet(state.oxygenDebt, tolerances.wet) / beforeCrowns,
  );
};

/** The root zone's water under a group's coverings in one member. Groups of one exposure share it. */
export const waterOf = (shop: Workshop, at: number, member: Member): RootZoneCourse => {
  const { scene, profile, irrigation } = shop;
  const { firstHour } = scene.period;
  const stretches = scene.groups[at]!.exposure.stretches;
  return rootZoneCourse(profile, member.weather, member.demand, irrigation, (day) => {
    const [start, end] = [firstHour[day]!, firstHour[day + 1]!];
    let share = 0;
    let rain = 0;
    let evaporation = 0;
    for (const stretch of stretches) {
      const part = Math.max(0, Math.min(end, stretch.until) - Math.max(start, stretch.from)) / (end - start);
      if (part === 0) continue;
      const covering = coveringOf(scene, stretch)!;
      share += part;
      rain += part * covering.rainThrough;
      evaporation += part * evaporationUnderCovering(covering, member.values['water.stillEvaporation']);
    }
    return share === 0 ? null : { share: Math.min(1, share), rainThrough: rain / share, evaporation: evaporation / share };
  });
};
