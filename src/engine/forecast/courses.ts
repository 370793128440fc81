import type { Exposure } from '#engine/forecast/exposure.ts';
import type { Group, Scene } from '#engine/forecast/scene.ts';

/** What numbers are given to: equal texts get the same number, in every scene of one calculation. */
export type Numbering = (text: string) => number;

/** Numbers from 0 in the order of asking. */
export const numbering = (): Numbering => {
  const known = new Map<string, number>();
  return (text) => {
    let number = known.get(text);
    if (number === undefined) known.set(text, (number = known.size));
    return number;
  };
};

/** Numberings of everything that groups, and options side by side, can share. */
export interface Shared {
  readonly courses: Numbering;
  readonly settled: Numbering;
  readonly heats: Numbering;
  readonly waters: Numbering;
  readonly skies: Numbering;
}

export const newShared = (): Shared => ({
  courses: numbering(),
  settled: numbering(),
  heats: numbering(),
  waters: numbering(),
  skies: numbering(),
});

/**
 * What happens to some turf, once for all groups to which the same happens. Turf in two zones that nothing lies on, in the same shade, goes
 * the same way; so does the zone that an option leaves alone.
 */
export interface Course {
  readonly group: Group;
  /** Number among the courses of the calculation. */
  readonly number: number;
  /** Numbers of its soil as the first floor comes and of its temperatures under floors (−1 where nothing ever lies), of its water, of its open light. */
  readonly settled: number;
  readonly heat: number;
  readonly water: number;
  readonly sky: number;
  /** Groups of the scene that go this way. */
  readonly groups: readonly number[];
  /** Zones of the scene they lie in, and the share of each zone. */
  readonly zones: readonly number[];
  readonly shares: Float64Array;
  /** By day: whether anything but growth happens. */
  readonly busy: Uint8Array;
}

export const coursesOf = (scene: Scene, shared: Shared): readonly Course[] => {
  const byNumber = new Map<number, number[]>();
  scene.groups.forEach((group, at) => {
    const number = shared.courses(nameOf(group));
    const here = byNumber.get(number);
    if (here) here.push(at);
    else byNumber.set(number, [at]);
  });
  return [...byNumber].map(([number, groups]): Course => {
    const group = scene.groups[groups[0]!]!;
    const { stretches } = group.exposure;
    const sky = `${group.shade} ${group.rigs.join()}`;
    const zones = [...new Set(groups.map((at) => scene.groups[at]!.zone))];
    const areaIn = (zone: number): number =>
      groups.reduce((sum, at) => (scene.groups[at]!.zone === zone ? sum + scene.groups[at]!.area : sum), 0);
    return {
      group,
      number,
      settled: stretches.length === 0 ? -1 : shared.settled(`${group.shade} ${stretches[0]!.from}`),
      heat: stretches.length === 0 ? -1 : shared.heats(`${group.shade} ${JSON.stringify(stretches.map(heatPart))}`),
      water: shared.waters(JSON.stringify(stretches.map(({ from, until, layer }) => [from, until, layer.covering]))),
      sky: shared.skies(sky),
      groups,
      zones,
      shares: Float64Array.from(zones, (zone) => areaIn(zone) / scene.zoneArea[zone]!),
      busy: busyDays(scene, group.exposure),
    };
  });
};

const heatPart = ({ from, until, layer }: Exposure['stretches'][number]) => [
  from,
  until,
  layer.covering,
  layer.loading,
  layer.cleanliness,
  layer.iceTemperature,
  layer.care,
];

/** Everything a course depends on. */
const nameOf = ({ shade, rigs, exposure }: Group): string => JSON.stringify([shade, rigs, exposure]);

const busyDays = ({ period, play }: Scene, { stretches, crowds, machines, incidents }: Exposure): Uint8Array => {
  const days = period.days.length;
  const busy = new Uint8Array(days);
  const mark = (day: number): void => {
    if (day >= 0 && day < days) busy[day] = 1;
  };
  if (stretches.length > 0) {
    const [from, until] = [stretches[0]!.from, stretches.at(-1)!.until];
    for (let day = 0; day < days; day++) if (period.firstHour[day + 1]! > from && period.firstHour[day]! < until) busy[day] = 1;
  }
  for (const visit of [...crowds, ...machines, ...play]) mark(visit.day);
  for (const visit of incidents) if (visit.days > 0) mark(Math.floor(visit.day + visit.days));
  return busy;
};
