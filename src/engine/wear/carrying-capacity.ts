import type { WearValues } from '#shared/parameters/wear.ts';

/**
 * Hours of adult play a week that a natural pitch carries, by its drainage; players aged 15 or under may play half as long again.
 *
 * @source sport-england-2011
 */
export const drainages = ['undrained', 'pipe', 'pipe-mole', 'pipe-sand'] as const;
export type Drainage = (typeof drainages)[number];

export interface Capacity {
  /** h a week */
  readonly least: number;
  /** h a week */
  readonly most: number;
}

export interface CapacitySettings {
  readonly hours: Readonly<Record<Drainage, Capacity>>;
  readonly youth: number;
}

export const capacitySettings = (values: WearValues): CapacitySettings => ({
  hours: Object.fromEntries(
    drainages.map((drainage) => [
      drainage,
      { least: values[`capacity.least.${drainage}`], most: values[`capacity.most.${drainage}`] },
    ]),
  ) as Readonly<Record<Drainage, Capacity>>,
  youth: values['capacity.youth'],
});

/** Hours a week; `youth` for players aged 15 or under. */
export const weeklyCapacity = (drainage: Drainage, youth: boolean, settings: CapacitySettings): Capacity => {
  const { least, most } = settings.hours[drainage];
  const factor = youth ? settings.youth : 1;
  return { least: least * factor, most: most * factor };
};

/** Hours a season of `weeks`. */
export const seasonCapacity = (weekly: Capacity, weeks: number): Capacity => ({
  least: weekly.least * weeks,
  most: weekly.most * weeks,
});
