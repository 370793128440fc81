/** Hours sod may stay in the roll. */
export interface RollLimits {
  /** h in cool weather and in heat */
  readonly coolHours: number;
  readonly hotHours: number;
  /** h that a specification allows at the most; null where none is agreed */
  readonly specified: number | null;
}

/** °C of 60 and 85 °F, the ends between which the limit falls. */
export const coolRoll = (60 - 32) / 1.8;
export const hotRoll = (85 - 32) / 1.8;

/**
 * Hours from harvest to laying that a temperature allows: near 48 h below 60 °F, 12 h above 85 °F, a straight line between (our
 * assumption), and never more than the specification.
 * @param temperature °C of the air on the way
 */
export const hoursInRollAllowed = (temperature: number, limits: RollLimits): number => {
  const heat = Math.min(1, Math.max(0, (temperature - coolRoll) / (hotRoll - coolRoll)));
  const allowed = limits.coolHours + heat * (limits.hotHours - limits.coolHours);
  return limits.specified === null ? allowed : Math.min(allowed, limits.specified);
};

export interface RollAnswer {
  readonly allowed: number;
  readonly within: boolean;
  /** what is wrong, or null */
  readonly reason: string | null;
}

/** Checks the hours from harvest to laying against the limit for the forecast temperature. */
export const judgeHoursInRoll = (hours: number, temperature: number, limits: RollLimits): RollAnswer => {
  const allowed = hoursInRollAllowed(temperature, limits);
  const within = hours <= allowed + 1e-9;
  const reason = within
    ? null
    : `${hours.toFixed(1)} h from harvest to laying at ${temperature.toFixed(0)} °C; the limit is ${allowed.toFixed(1)} h`;
  return { allowed, within, reason };
};

/** % of soil moisture over which the rise of heat with moisture was measured. */
export const heatMoistureRange = { low: 6, high: 30 } as const;

/**
 * Further heat of harvested sod by moisture, W per kg of dry weight: 0.0032 for each % of moisture between 6 and 30 %.
 * @throws RangeError outside that range
 * @source sod-heat-2005
 */
export const heatByMoisture = (fromPercent: number, toPercent: number): number => {
  for (const [field, percent] of [
    ['fromPercent', fromPercent],
    ['toPercent', toPercent],
  ] as const) {
    if (!(percent >= heatMoistureRange.low && percent <= heatMoistureRange.high)) {
      throw new RangeError(`${field}: moisture of sod was measured from 6 to 30 %, not ${percent} %`);
    }
  }
  return 0.0032 * (toPercent - fromPercent);
};

/** Whether a stack is hot enough to kill half in four days. @param lethal °C, 36.1 @source sod-stack-2001 */
export const stackIsLethal = (temperature: number, lethal: number): boolean => temperature >= lethal;
