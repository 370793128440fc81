import type { ProgrammeKind } from '#shared/vocabulary/plan.ts';
import { courseInFull } from '#engine/forecast/course.ts';
import { newShared } from '#engine/forecast/courses.ts';
import { openReserveChange } from '#engine/forecast/day-drivers.ts';
import { tolerancesOf } from '#engine/forecast/tolerances.ts';
import { workshop, type Workshop } from '#engine/forecast/workshop.ts';
import { groundLoads } from '#engine/forecast/ground-loads.ts';
import { drawnMember, memberMaker, usualMember, type Member } from '#engine/forecast/member.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { sceneOf } from '#engine/forecast/scene.ts';
import { eveningsOf, type Evenings } from '#engine/forecast/summarise.ts';
import { keptAfterSpills } from '#engine/forecast/incidents.ts';
import { memberAnswers, type MemberAnswers } from '#engine/forecast/member-answers.ts';
import { lightFromFlux } from '#engine/light/photons.ts';
import { advanceDays, anchorageAt } from '#engine/recovery/advance-days.ts';
import { applyJob, type Job } from '#engine/recovery/jobs.ts';
import { lightLeft, sownGrass, together } from '#engine/recovery/overseeded.ts';
import { judgeReadiness } from '#engine/recovery/readiness.ts';
import { driverLayout, driverStride, standLayout, standStride } from '#engine/recovery/stand-layout.ts';
import { greenCover, readStand, type Stand, writeStand, youngSeedlingCover } from '#engine/recovery/stand.ts';
import type { TurfTraits } from '#engine/recovery/turf-traits.ts';

/** A zone's chance by the day on which a programme ends. */
export interface ProgrammeOutlook {
  readonly zone: string;
  readonly programme: ProgrammeKind;
  readonly firstDay: string;
  /** One a day, to the eve of the home date. */
  readonly chance: readonly number[];
  readonly shortfall: readonly number[];
}

/** The weather of a day as work meets it. */
export interface WorkingWeather {
  readonly date: string;
  /** Share of members with rain enough to stop dry work. */
  readonly rainChance: number;
  readonly frozen: boolean;
  readonly hot: boolean;
  readonly saturated: boolean;
}

export interface RecoveryOutlook {
  readonly outlooks: readonly ProgrammeOutlook[];
  readonly weather: readonly WorkingWeather[];
  /** Days on which rain stops dry work, member by member, `1` where it does: one sign a day of `weather`. */
  readonly rain: readonly string[];
  /** m² to be replaced or mended, member by member: turf of groups that are not ready by themselves. */
  readonly need: readonly number[];
}

/** Cuts of sod the venue could get, m of soil: of the farms it names, or the trade's usual. */
export interface SodCuts {
  readonly thin: number;
  readonly thick: number;
}

export interface OutlookQuestion {
  readonly question: ForecastQuestion;
  /** The ways back the construction allows. */
  readonly programmes: readonly ProgrammeKind[];
  readonly cuts: SodCuts;
}

/**
 * What each way back would make of each zone by the home date, if its last job ended on each day.
 *
 * Every member's zone is kept as it is when its last layer is off. From there it goes on alone; on each day a branch is made in which
 * the programme's work is done on that day, and the branch is followed to the eve of the home date. The share of members that are ready
 * there is the chance.
 */
export const recoveryOutlook = (
  { question, programmes, cuts }: OutlookQuestion,
  report: (share: number) => void = () => {},
): RecoveryOutlook => {
  const scene = sceneOf(question);
  const maker = memberMaker(scene);
  const shop = workshop(scene, maker.window, groundLoads(scene), newShared());
  const evenings = eveningsOf(shop);
  const zones = scene.zones
    .map((_, zone) => zone)
    .filter((zone) => scene.groups.some((g) => g.zone === zone && g.exposure.stretches.length > 0));
  const sums = zones.map((zone) => programmes.map(() => emptySums(evenings.home - evenings.after[zone]! + 1)));
  const rain = new Float64Array(scene.period.days.length);
  const saturated = new Float64Array(scene.period.days.length);
  const frozen = new Float64Array(scene.period.days.length);
  const hot = new Float64Array(scene.period.days.length);
  const need: number[] = [];
  const stopped: string[] = [];
  const answers = memberAnswers(shop, scene.period.days.length);
  for (let index = 0; index < question.members; index++) {
    const member = question.members === 1 ? usualMember(maker) : drawnMember(maker, index);
    answers.begin();
    const stands = standsAt(shop, member, evenings, zones, answers);
    need.push(stands.need);
    zones.forEach((zone, place) => {
      const start = { stands: stands.byZone[zone]!, spared: stands.spared[zone]! };
      follow(shop, member, evenings, zone, start, programmes, cuts, sums[place]!);
    });
    const stops = (day: number): boolean => member.weather.rain[day]! >= question.parameters['plan.rain.stops'];
    stopped.push(scene.period.days.map((_, day) => (stops(day) ? '1' : '0')).join(''));
    for (let day = 0; day < rain.length; day++) {
      if (stops(day)) rain[day]!++;
      if (member.weather.minimum[day]! < -1) frozen[day]!++;
      if (member.weather.maximum[day]! > question.parameters['plan.heat.stops']) hot[day]!++;
      if (stands.airless[day]! > 0) saturated[day]!++;
    }
    if (index % 5 === 4) report((index + 1) / question.members);
  }
  const members = question.members;
  return {
    need,
    rain: stopped,
    outlooks: zones.flatMap((zone, place) =>
      programmes.map((programme, p) => ({
        zone: scene.zones[zone]!.letter,
        programme,
        firstDay: scene.period.days[evenings.after[zone]!]!,
        chance: Array.from(sums[place]![p]!.ready, (count) => count / members),
        shortfall: Array.from(sums[place]![p]!.short, (sum) => sum / members),
      })),
    ),
    weather: scene.period.days.map((date, day) => ({
      date,
      rainChance: rain[day]! / members,
      frozen: frozen[day]! > members / 2,
      hot: hot[day]! > members / 2,
      saturated: saturated[day]! > members / 2,
    })),
  };
};

interface Sums {
  readonly ready: Float64Array;
  readonly short: Float64Array;
}
const emptySums = (days: number): Sums => ({ ready: new Float64Array(days), short: new Float64Array(days) });

/** The stand of a zone, and that of the grass sown into it; the second is empty where there is none. */
interface Stands {
  readonly base: Float64Array;
  readonly overseed: Float64Array;
}
const noStands = (): Stands => ({ base: new Float64Array(standStride), overseed: new Float64Array(standStride) });

/** Adds a share of a stand to a mean; the deepest rut counts whole. */
const addStand = (mean: Float64Array, stand: Float64Array, share: number): void => {
  const rut = Math.max(mean[standLayout.ruts]!, stand[standLayout.ruts]!);
  for (let i = 0; i < standStride; i++) mean[i]! += share * stand[i]!;
  mean[standLayout.ruts] = rut;
};

/** The mean stand of every zone on the evening its last layer is off; the deepest rut of its groups. */
const standsAt = (shop: Workshop, member: Member, evenings: Evenings, zones: readonly number[], answers: MemberAnswers) => {
  const { scene } = shop;
  const { rules } = scene.question.venue;
  const days = scene.period.days.length;
  const tolerances = tolerancesOf(member);
  const byZone = scene.zones.map(noStands);
  const spared = new Float64Array(scene.zones.length);
  const airless = new Float64Array(days);
  let need = 0;
  shop.courses.forEach((course, at) => {
    const { exposure } = course.group;
    course.zones.forEach((zone, place) => {
      if (!zones.includes(zone)) return;
      const [into, overseed] = [new Float64Array(standStride), new Float64Array(standStride)];
      const wishes = { losses: false, keep: { day: evenings.after[zone]!, into, overseed } };
      const { track, water } = courseInFull(shop, at, member, tolerances, answers, wishes);
      const share = course.shares[place]!;
      addStand(byZone[zone]!.base, into, share);
      addStand(byZone[zone]!.overseed, overseed, share);
      spared[zone]! += share * keptAfterSpills(exposure, evenings.home, tolerances.spill);
      if (exposure.stretches.length === 0) return;
      for (let day = 0; day < days; day++) airless[day] = Math.max(airless[day]!, water.airless[day]!);
      if (track.cover[evenings.home]! < rules.coverNeeded - 1e-6) need += share * scene.zoneArea[zone]!;
    });
  });
  return { byZone, spared, airless, need };
};

/** What a programme does to the ground on the day its last job ends. */
const workOf = (programme: ProgrammeKind, cuts: SodCuts, shop: Workshop): readonly Job[] => {
  const { parameters, venue } = shop.scene.question;
  const grass = sownGrass(venue.field.sward);
  const feed: Job = { kind: 'feed', rate: Math.min(parameters['nitrogen.cap'], parameters['nitrogen.recovery']) };
  const seed: Job = { kind: 'seed', grass, rate: parameters[`seed.rate.${grass}`] };
  const spike: Job = { kind: 'solid-tine', pierced: parameters['plan.spike.pierced'] };
  const lay = (thickness: number): readonly Job[] => [{ kind: 'strip' }, { kind: 'lay-sod', thickness }, { kind: 'roll' }];
  switch (programme) {
    case 'leave':
      return [];
    case 'recover':
    case 'recover-under-lights':
      return [spike, feed];
    case 'overseed':
      return [spike, { kind: 'topdress', depth: parameters['plan.topdress.depth'] }, seed, feed];
    case 'replace-thin':
      return lay(cuts.thin);
    case 'replace-thick':
      return lay(cuts.thick);
    case 'replace-carpet':
      return lay(parameters['plan.carpet.thickness']);
    case 'plane-and-reseed':
      return [{ kind: 'strip' }, seed, feed];
  }
};

/** Follows every programme of one zone in one member from every day to the eve of the home date. */
const follow = (
  shop: Workshop,
  member: Member,
  evenings: Evenings,
  zone: number,
  start: { readonly stands: Stands; readonly spared: number },
  programmes: readonly ProgrammeKind[],
  cuts: SodCuts,
  sums: readonly Sums[],
): void => {
  const { scene } = shop;
  const drivers = driversOf(shop, member, zone, 0);
  const lit = programmes.includes('recover-under-lights') ? driversOf(shop, member, zone, lampsOf(shop)) : drivers;
  const [after, home] = [evenings.after[zone]!, evenings.home];
  const along = { base: start.stands.base.slice(), overseed: start.stands.overseed.slice() };
  const branch = noStands();
  const works = programmes.map((programme) => workOf(programme, cuts, shop));
  const rested = (day: number): number => (day - after) * 24;
  for (let day = after; day <= home; day++) {
    if (day > after) advance(along, drivers, day, 1, member);
    const [base, overseed] = [readStand(along.base, 0), readStand(along.overseed, 0)];
    programmes.forEach((programme, p) => {
      if (programme === 'leave' && day > after) {
        sums[p]!.ready[day - after]! += sums[p]!.ready[0]! - (sums[p]!.ready[day - after] ?? 0);
        sums[p]!.short[day - after] = sums[p]!.short[0]!;
        return;
      }
      work(branch, base, overseed, works[p]!, member);
      advance(branch, programme === 'recover-under-lights' ? lit : drivers, day + 1, home - day, member);
      // What was spilt comes back in its own weeks, unless the turf there is taken off.
      const spared = relays(programme) ? 1 : start.spared;
      const verdict = judge(scene, member, branch, spared, rested(home));
      if (verdict.ready) sums[p]!.ready[day - after]!++;
      sums[p]!.short[day - after]! += verdict.short;
    });
  }
};

/** The open days of both stands. */
interface Drivers {
  readonly base: Float64Array;
  readonly overseed: Float64Array;
}
const driversOf = (shop: Workshop, member: Member, zone: number, lamps: number): Drivers => {
  const base = openDrivers(shop, member, zone, lamps);
  return { base, overseed: member.overseed === null ? base : openDrivers(shop, member.overseed, zone, lamps) };
};

/** Moves the stands of a zone on; day by day where one shades the other. */
const advance = (stands: Stands, drivers: Drivers, from: number, count: number, member: Member): void => {
  const { overseed } = member;
  if (overseed === null) return advanceDays(stands.base, 0, drivers.base, from, count, member.traits, null, 0);
  const shaded = new Float64Array(driverStride);
  for (let day = from; day < from + count; day++) {
    advanceDays(stands.overseed, 0, drivers.overseed, day, 1, overseed.traits, null, 0);
    shaded.set(drivers.base.subarray(day * driverStride, (day + 1) * driverStride));
    const light = shaded[driverLayout.light]! * lightLeft(greenCover(readStand(stands.overseed, 0)), member.values);
    shaded[driverLayout.light] = light;
    shaded[driverLayout.reserveChange] = openReserveChange(member, day, light);
    advanceDays(stands.base, 0, shaded, 0, 1, member.traits, null, 0);
  }
};

/** Writes what jobs make of both stands; what is sown belongs to the overseed, what is laid comes without one. */
const work = (into: Stands, base: Stand, overseed: Stand, jobs: readonly Job[], member: Member): void => {
  const sown = member.overseed;
  const done = (stand: Stand, leftOut: Job['kind'] | null, traits: TurfTraits): Stand =>
    jobs.reduce((before, job) => (job.kind === leftOut ? before : applyJob(before, job, traits)), stand);
  writeStand(into.base, 0, done(base, sown === null ? null : 'seed', member.traits));
  if (sown !== null) writeStand(into.overseed, 0, done(overseed, 'lay-sod', sown.traits));
};

const relays = (programme: ProgrammeKind): boolean => programme.startsWith('replace-') || programme === 'plane-and-reseed';

/** mol/m²/d that a rig of lamps adds. */
const lampsOf = ({ scene }: Workshop): number => {
  const { parameters } = scene.question;
  return lightFromFlux(parameters['plan.lights.flux'], parameters['plan.lights.hours']);
};

/** The open, watered days of the zone's largest group; lamps on top. */
const openDrivers = ({ scene }: Workshop, member: Member, zone: number, lamps: number): Float64Array => {
  const days = scene.period.days.length;
  const largest = scene.groups.reduce<(typeof scene.groups)[number] | null>(
    (best, group) => (group.zone === zone && (best === null || group.area > best.area) ? group : best),
    null,
  )!;
  const drivers = new Float64Array(days * driverStride);
  for (let day = 0; day < days; day++) {
    const now = day * driverStride;
    drivers[now + driverLayout.temperature] = member.air[day]!;
    drivers[now + driverLayout.soilTemperature] = member.soil[day]!;
    drivers[now + driverLayout.light] = member.useful[largest.shade * days + day]! + lamps;
    drivers[now + driverLayout.watered] = 1;
    drivers[now + driverLayout.reserveChange] = openReserveChange(member, day, drivers[now + driverLayout.light]!);
  }
  return drivers;
};

const judge = (scene: ReturnType<typeof sceneOf>, member: Member, stands: Stands, spared: number, sinceCovering: number) => {
  const { rules } = scene.question.venue;
  const [base, overseed] = [readStand(stands.base, 0), readStand(stands.overseed, 0)];
  const green = greenCover(base);
  const cover = together(green, greenCover(overseed)) * spared;
  const young = (stand: Stand): number => youngSeedlingCover(stand, (grass) => member.values[`seed.playAge.${grass}`]);
  const verdict = judgeReadiness(
    {
      cover,
      ruts: base.ruts,
      anchored: anchorageAt(stands.base, 0, member.traits),
      youngSeedlings: young(base) + (1 - green) * young(overseed),
      sinceCovering,
      hardness: null,
    },
    {
      cover: rules.coverNeeded,
      ruts: rules.rutAllowed,
      anchored: member.traits.sod.anchored,
      seedlingShare: member.values['readiness.seedlingShare'],
      rest: rules.rest,
      hardness: null,
    },
  );
  return { ready: verdict.ready, short: Math.max(0, rules.coverNeeded - cover) };
};
