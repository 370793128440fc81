import type { Warning } from '#shared/vocabulary/forecast.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';
import { type CoveredStretch, lyingAt } from '#engine/forecast/exposure.ts';
import { coveringOf } from '#engine/forecast/ground-loads.ts';
import { growthOf, type Member } from '#engine/forecast/member.ts';
import type { Group } from '#engine/forecast/scene.ts';
import type { UsualCourse } from '#engine/forecast/tally.ts';
import { type Workshop, dayOfHour } from '#engine/forecast/workshop.ts';
import { aluminiumWarnings, closedHoursLeft } from '#engine/loads/park-rules.ts';

const rounded = (value: number): number => Math.round(value * 100) / 100;

type Found = Omit<Warning, 'zone'>;

/**
 * What a reader must be warned of, zone by zone: machines beyond a limit, floors that lie longer than the trade leaves them, roll-out
 * aluminium outside its hours, and turf used too soon after its floor came off. Of warnings of one kind about one subject the worst stands.
 *
 * @source nps-turf-guide
 */
export const warningsOf = (shop: Workshop, usual: UsualCourse, member: Member): readonly Warning[] => {
  const worst = new Map<string, Warning>();
  shop.scene.groups.forEach((group, at) => {
    const zone = shop.scene.zones[group.zone]!.letter;
    const found = [
      ...machinesBeyondLimits(shop, group, usual.water[at]!.top),
      ...lyingTooLong(shop, group, member),
      ...aluminiumOutsideHours(shop, group),
      ...usedTooSoon(shop, group),
    ];
    for (const { kind, subject, value, limit } of found) {
      const key = `${zone} ${kind} ${subject}`;
      const before = worst.get(key);
      const warning = { kind, zone, subject, value: rounded(value!), limit: rounded(limit!) };
      if (!before || beyond(warning) > beyond(before)) worst.set(key, warning);
    }
  });
  return [...worst.values()];
};

/** How far a warning lies from its limit, in the limit's own unit. */
const beyond = ({ value, limit }: Warning): number => Math.abs(value! - limit!);

const machinesBeyondLimits = (shop: Workshop, group: Group, water: Float64Array): readonly Found[] =>
  group.exposure.machines.flatMap((visit) =>
    shop.loads.flags(group, visit, water[visit.day]!).map(({ kind, value, limit }) => ({
      kind,
      subject: shop.scene.vehicles.get(visit.pass.vehicle)!.name,
      value,
      limit,
    })),
  );

/** Stretches of one covering that follow on each other, as one. */
const wholeLying = (stretches: readonly CoveredStretch[]): readonly CoveredStretch[] =>
  stretches.reduce<CoveredStretch[]>((whole, next) => {
    const before = whole.at(-1);
    if (before && before.until === next.from && before.layer.covering === next.layer.covering)
      whole[whole.length - 1] = { ...before, until: next.until };
    else whole.push(next);
    return whole;
  }, []);

const lyingTooLong = ({ scene }: Workshop, { exposure }: Group, member: Member): readonly Found[] =>
  wholeLying(exposure.stretches).flatMap((stretch) => {
    const covering = coveringOf(scene, stretch)!;
    const days = (stretch.until - stretch.from) / 24;
    const limit = usualDays(scene.question.parameters, covering, meanAir(scene.period.firstHour, stretch, member), member);
    return limit !== null && days > limit
      ? [{ kind: 'covered-longer-than-usual' as const, subject: covering.name, value: days, limit }]
      : [];
  });

const meanAir = (firstHour: Int32Array, { from, until }: CoveredStretch, { air }: Member): number => {
  const [first, last] = [dayOfHour(firstHour, from), dayOfHour(firstHour, until - 1)];
  let sum = 0;
  for (let day = first; day <= last; day++) sum += air[day]!;
  return sum / (last - first + 1);
};

/** d the trade leaves a floor at a mean air temperature, °C; null where nobody says, and for turf that does not grow. */
const usualDays = (
  values: Member['values'],
  { usualDays: told }: Covering,
  temperature: number,
  member: Member,
): number | null => {
  if (!told || growthOf(member, temperature) <= member.traits.growthStop) return null;
  const [cool, hot] = [values['covered.coolWeather'], values['covered.hotWeather']];
  const heat = Math.min(1, Math.max(0, (temperature - cool) / (hot - cool)));
  return told.cool + heat * (told.hot - told.cool);
};

const aluminiumOutsideHours = ({ scene }: Workshop, { exposure }: Group): readonly Found[] => {
  const values = scene.question.parameters;
  const rule = {
    hours: values['park.aluminium.hours'],
    before: values['park.aluminium.before'],
    after: values['park.aluminium.after'],
  };
  const rolled = exposure.stretches.filter((stretch) => coveringOf(scene, stretch)!.rolledOut === true);
  if (rolled.length === 0) return [];
  const { firstHour } = scene.period;
  const subject = coveringOf(scene, rolled[0]!)!.name;
  return scene.period.days.flatMap((_, day) => {
    const [start, end] = [firstHour[day]!, firstHour[day + 1]!];
    const hours = rolled
      .map(({ from, until }) => [Math.max(from, start) - start, Math.min(until, end) - start] as const)
      .filter(([from, until]) => until > from);
    return aluminiumWarnings(hours, rule).map(({ reason, hours: over }) =>
      reason === 'too-long'
        ? { kind: 'aluminium-too-long' as const, subject, value: rule.hours + over, limit: rule.hours }
        : { kind: 'aluminium-at-midday' as const, subject, value: over, limit: 0 },
    );
  });
};

/** Feet and machines on turf whose floor came off fewer hours ago than the guide keeps it closed. */
const usedTooSoon = ({ scene }: Workshop, { exposure }: Group): readonly Found[] => {
  const closed = scene.question.parameters['park.closedAfterRemoval'];
  const floors = exposure.stretches.filter((stretch) => isFloor(coveringOf(scene, stretch)!));
  const visits = [
    ...exposure.crowds.map(({ hour }) => ({ hour, subject: 'People' })),
    ...exposure.machines.map(({ hour, pass }) => ({ hour, subject: scene.vehicles.get(pass.vehicle)!.name })),
  ];
  return visits.flatMap(({ hour, subject }) => {
    const off = Math.max(-Infinity, ...floors.map(({ until }) => until).filter((until) => until <= hour));
    const lies = lyingAt(exposure, hour);
    if (off === -Infinity || (lies !== null && isFloor(coveringOf(scene, lies)!)) || closedHoursLeft(hour - off, closed) === 0)
      return [];
    return [{ kind: 'used-too-soon' as const, subject, value: hour - off, limit: closed }];
  });
};

/** Anything that takes light, air or feet from the turf; roped turf is none. */
const isFloor = ({ lightTransmission, thickness }: Covering): boolean => thickness > 0 || lightTransmission < 1;
