import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Booking } from '#shared/vocabulary/booking.ts';
import { newShared } from '#engine/forecast/courses.ts';
import { fillOpenDays } from '#engine/forecast/day-drivers.ts';
import { groundLoads } from '#engine/forecast/ground-loads.ts';
import { drawnMember, fillSun, memberMaker, type Member } from '#engine/forecast/member.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { sceneOf } from '#engine/forecast/scene.ts';
import { tolerancesOf, type Tolerances } from '#engine/forecast/tolerances.ts';
import { workshop, type Workshop } from '#engine/forecast/workshop.ts';
import { startClimate, straightProfile } from '#engine/heat/climate-column.ts';
import { runClimate } from '#engine/heat/climate.ts';
import type { FloorState } from '#engine/heat/floor.ts';
import { causes } from '#engine/injury/causes.ts';
import { heatDose, keptAfterHeat } from '#engine/injury/heat-dose.ts';
import { gainFromLight, gainWarmth, lossAt } from '#engine/injury/reserve-rates.ts';
import { advanceDays } from '#engine/recovery/advance-days.ts';
import { injureAt } from '#engine/recovery/injure.ts';
import { driverLayout, driverStride, standLayout, standStride } from '#engine/recovery/stand-layout.ts';
import { standOf, writeStand } from '#engine/recovery/stand.ts';

/** s of processor time since a call of `process.cpuUsage`: what other programs do on the machine counts less than on a clock. */
export const processorSince = (began: NodeJS.CpuUsage): number => {
  const { user, system } = process.cpuUsage(began);
  return (user + system) / 1e6;
};

/** One run of the hot chain: s of processor time of the best round, and sums over the members that show that both did the same. */
export interface HotRun {
  readonly seconds: number;
  /** °C of the crowns in the last covered hour, cover and reserve on the last day. */
  readonly sums: readonly [number, number, number];
}

/** The chain made ready: one stretch of turf under one floor in many members, as the engine itself lays it out. */
export interface HotChain {
  readonly shop: Workshop;
  readonly members: readonly Member[];
  readonly tolerances: readonly Tolerances[];
  /** By member: its open days. */
  readonly drivers: readonly Float64Array[];
  readonly begin: number;
  readonly from: number;
  readonly until: number;
}

const mostCells = 32;

/** @param booking one zone under one floor without care; turf that never freezes in those days */
export const hotChain = (question: ForecastQuestion, booking: Booking): HotChain => {
  const scene = sceneOf({ ...question, booking });
  const maker = memberMaker(scene);
  const whole = workshop(scene, maker.window, groundLoads(scene), newShared());
  const at = whole.courses.findIndex(({ heat }) => heat >= 0);
  const shop = { ...whole, courses: [whole.courses[at]!], floors: [whole.floors[at]!] };
  const { stretch } = shop.floors[0]![0]!;
  const members = Array.from({ length: question.members }, (_, index) => drawnMember(maker, index));
  const until = stretch.until - shop.window.from;
  members.forEach((member) => fillSun(scene, shop.window, member, shop.courses[0]!.group.shade, 0, until));
  return {
    shop,
    members,
    tolerances: members.map((member) => tolerancesOf(member)),
    drivers: members.map((member) => {
      const drivers = new Float64Array(scene.period.days.length * driverStride);
      fillOpenDays(scene, shop.courses[0]!, member, drivers);
      return drivers;
    }),
    begin: 0,
    from: stretch.from - shop.window.from,
    until,
  };
};

const HEAT = causes.indexOf('heat');

/** The chain in the engine's own functions. */
const runOnce = (chain: HotChain, crown: Float64Array, drivers: Float64Array): HotRun['sums'] => {
  const { shop, begin, from, until } = chain;
  const { climate, stand, scene, window } = shop;
  const days = scene.period.days.length;
  const [laid] = shop.floors[0]!;
  const bare = shop.bare[shop.courses[0]!.group.shade]!;
  const track = { cover: new Float32Array(days), crowns: new Float32Array(days), reserve: new Float32Array(days) };
  const first = window.firstDay + Math.floor(from / 24);
  const last = window.firstDay + Math.floor((until - 1) / 24);
  const start = startOf(shop);
  const sums: [number, number, number] = [0, 0, 0];
  chain.members.forEach((member, index) => {
    const { heat } = chain.tolerances[index]!;
    const { hours, rates, traits } = member;
    drivers.set(chain.drivers[index]!);
    stand.set(start);
    startClimate(climate, straightProfile(climate.ground, hours.air[begin]!, shop.deepTemperature));
    runClimate(climate, bare, hours, begin, from, crown, 1);
    runClimate(climate, laid!.floor, hours, from, until, crown, 1);
    advanceDays(stand, 0, drivers, 0, first, traits, track, 0);
    let dose = 0;
    for (let day = first; day <= last; day++) {
      const now = day * driverStride;
      const before = keptAfterHeat(dose, heat);
      let [warmth, loss, lit] = [0, 0, 0];
      const morning = (day - window.firstDay) * 24;
      for (let hour = morning; hour < morning + 24; hour++) {
        const lies = hour >= from && hour < until;
        const temperature = lies ? crown[hour]! : hours.air[hour]!;
        warmth += gainWarmth(rates, temperature);
        loss += lossAt(rates, temperature, lies ? laid!.seal : 0);
        lit += lies ? laid!.light : 1;
      }
      dose += heatDose(crown, Math.max(morning, from), Math.min(morning + 24, until), heat);
      const kept = keptAfterHeat(dose, heat) / before;
      injureAt(stand, 0, HEAT, kept, kept);
      const useful = (drivers[now + driverLayout.light]! * lit) / 24;
      drivers[now + driverLayout.light] = useful;
      drivers[now + driverLayout.covered] = 1;
      drivers[now + driverLayout.reserveChange] = (gainFromLight(rates, useful) * warmth - loss) / 24;
      advanceDays(stand, 0, drivers, day, 1, traits, track, day);
    }
    advanceDays(stand, 0, drivers, last + 1, days - last - 1, traits, track, last + 1);
    sums[0] += crown[until - 1]!;
    sums[1] += stand[standLayout.cover]!;
    sums[2] += stand[standLayout.reserve]!;
  });
  return sums;
};

const startOf = ({ scene, loads }: Workshop): Float64Array => {
  const start = new Float64Array(standStride);
  const { venue, parameters } = scene.question;
  writeStand(start, 0, standOf(venue.field.usual, loads.ground.bulkDensity, parameters['nitrogen.usual']));
  return start;
};

export const inTypeScript = (chain: HotChain, rounds: number): HotRun => {
  const crown = new Float64Array(chain.shop.window.hours);
  const drivers = new Float64Array(chain.shop.scene.period.days.length * driverStride);
  let seconds = Infinity;
  let sums: HotRun['sums'] = [0, 0, 0];
  for (let round = 0; round < rounds; round++) {
    const began = process.cpuUsage();
    sums = runOnce(chain, crown, drivers);
    seconds = Math.min(seconds, processorSince(began));
  }
  return { seconds, sums };
};

/** The same by the C program beside this file; null where there is no gcc. */
export const inC = (chain: HotChain, rounds: number): HotRun | null => {
  if (spawnSync('gcc', ['--version']).status !== 0) return null;
  const folder = mkdtempSync(join(tmpdir(), 'hot-chain-'));
  try {
    const [program, data] = [join(folder, 'hot-chain'), join(folder, 'chain.f64')];
    execFileSync('gcc', ['-O2', '-o', program, join(import.meta.dirname, 'hot-chain.c'), '-lm']);
    writeFileSync(data, Buffer.from(Float64Array.from(written(chain)).buffer));
    const [seconds, ...sums] = execFileSync(program, [data, String(rounds)], { encoding: 'utf8' })
      .split(' ')
      .map(Number);
    return { seconds: seconds!, sums: sums as [number, number, number] };
  } finally {
    rmSync(folder, { recursive: true });
  }
};

/** The numbers of the chain in the order in which the C program reads them. */
const written = ({ shop, members, tolerances, drivers, begin, from, until }: HotChain): number[] => {
  const { climate, window, settings, scene, deepTemperature } = shop;
  const { ground } = climate;
  const [laid] = shop.floors[0]!;
  const bottom = ground.depth[ground.cells - 1]! + ground.thickness[ground.cells - 1]! / 2 + ground.deepDistance;
  const head = [members.length, window.hours, scene.period.days.length, ground.cells, window.firstDay, begin, from, until];
  const bodies = members.map((member, index) => [
    ...ratesOf(member),
    ...traitsOf(member, shop),
    tolerances[index]!.heat.halfKill,
    tolerances[index]!.heat.decade,
    tolerances[index]!.heat.steepness,
    ...member.hours.air,
    ...member.hours.sun,
    ...member.hours.wind,
    ...member.hours.vapour,
    ...member.hours.emissivity,
    ...drivers[index]!,
  ]);
  return [
    ...head,
    laid!.seal,
    laid!.light,
    settings.step,
    (settings.canopyHeatCapacity * settings.canopyThickness) / settings.step,
    settings.emissivity,
    settings.leafResistance,
    settings.stillConvection,
    settings.windConvection,
    settings.pressure,
    deepTemperature,
    ground.upper,
    ...floorOf(shop.bare[shop.courses[0]!.group.shade]!.states[0]!),
    ...floorOf(laid!.floor.states[0]!),
    ...startOf(shop),
    ...ground.depth,
    bottom,
    ...bodies.flat(),
  ];
};

const padded = (values: ArrayLike<number>, length: number): number[] => Array.from({ length }, (_, at) => values[at] ?? 0);

const floorOf = (state: FloorState): number[] => [
  state.nodes,
  ...padded(state.store, 2),
  ...padded(state.link, 2),
  ...padded(state.airLink, 2),
  ...padded(state.sun, 2),
  state.topArea,
  state.openArea,
  state.canopySun,
  state.gapLink,
  state.vapourShare,
  state.shadedLeaf,
  state.mistCanopy,
  state.shelter.sky,
  state.shelter.wind,
  state.sweep.ground.cells,
  state.sweep.link[0]!,
  ...padded(state.sweep.own, mostCells),
  ...padded(state.sweep.fromBelow, mostCells),
  ...padded(state.sweep.q, mostCells),
];

const ratesOf = ({ rates: { warmth, daily, gainScale, traits } }: Member): number[] => [
  warmth,
  daily,
  gainScale,
  traits.halfLight,
  traits.sealTemperature,
  traits.sealLossWarm,
  traits.sealLossCold,
  traits.growthBase,
  traits.dormantSpan,
  traits.dormantShare,
  traits.optimum,
  traits.width,
];

const traitsOf = ({ traits }: Member, { loads }: Workshop): number[] => {
  const { growth, starvation, dark } = traits;
  const firm = (loads.ground.bulkDensity - traits.compactionFree) / (traits.compactionStop - traits.compactionFree);
  return [
    starvation.halfLeaf,
    starvation.leafSpread,
    starvation.halfCrowns,
    starvation.crownsSpread,
    growth.optimum,
    growth.spread,
    growth.plateau ? 1 : 0,
    traits.growthStop,
    traits.leafRate,
    traits.spreadRate,
    traits.rateLimit,
    traits.lightNeed,
    traits.nitrogenUse,
    traits.nitrogenUnfed,
    traits.nitrogenFull,
    1 - (1 - traits.compactionLeast) * Math.min(1, Math.max(0, firm)),
    Math.log(dark.q10) / 10,
    dark.reference,
    dark.holdLight,
    dark.unwind,
  ];
};
