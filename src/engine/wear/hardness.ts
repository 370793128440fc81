import type { WearValues } from '#shared/parameters/wear.ts';

/**
 * Readings of surface hardness by a dropped hammer.
 *
 * A reading means nothing without its hammer: mass, drop height and number of the drop are part of it, and readings of different hammers
 * are never compared. The first drop differs from the later ones (Twomey et al. 2014). 1 impact value (CIV) = 10 g.
 *
 * @source astm-f1702
 * @source mcauliffe-hammer
 * @source twomey-2014
 */
export interface HardnessReading {
  /** g */
  readonly value: number;
  /** kg */
  readonly hammerMass: number;
  /** m */
  readonly dropHeight: number;
  /** 1 for the first drop. */
  readonly dropNumber: number;
}

/** Throws RangeError naming the field that is missing or out of range. */
export const hardnessReading = (reading: HardnessReading): HardnessReading => {
  if (!(reading.value >= 0 && reading.value < 1000)) throw new RangeError('value: must be between 0 and 1000 g');
  if (!(reading.hammerMass > 0)) throw new RangeError('hammer mass: must be above 0 kg');
  if (!(reading.dropHeight > 0)) throw new RangeError('drop height: must be above 0 m');
  if (!(Number.isInteger(reading.dropNumber) && reading.dropNumber >= 1))
    throw new RangeError('drop number: must be a whole number from 1');
  return reading;
};

/** g in impact values. */
export const impactValueToG = (civ: number): number => civ * 10;

export type Comparison =
  | { readonly comparable: true; readonly difference: number }
  | {
      readonly comparable: false;
      readonly reason: 'hammer mass differs' | 'drop height differs' | 'first drop against a later one';
    };

type Hammer = Pick<HardnessReading, 'hammerMass' | 'dropHeight' | 'dropNumber'>;

const mismatch = (one: Hammer, other: Hammer): Extract<Comparison, { comparable: false }>['reason'] | null => {
  if (Math.abs(one.hammerMass - other.hammerMass) > 0.01 * other.hammerMass) return 'hammer mass differs';
  if (Math.abs(one.dropHeight - other.dropHeight) > 0.02 * other.dropHeight) return 'drop height differs';
  return (one.dropNumber === 1) !== (other.dropNumber === 1) ? 'first drop against a later one' : null;
};

/** `second` less `first`, g, where both come from the same hammer; otherwise the reason why not. */
export const compareReadings = (first: HardnessReading, second: HardnessReading): Comparison => {
  const reason = mismatch(hardnessReading(first), hardnessReading(second));
  return reason ? { comparable: false, reason } : { comparable: true, difference: second.value - first.value };
};

/** Lower edges of four of the five bands; a value on an edge belongs above it, except that `tooHigh` itself is still high. */
export interface Bands {
  readonly low: number;
  readonly preferred: number;
  readonly high: number;
  readonly tooHigh: number;
}

export const bandNames = ['unacceptably-low', 'low', 'preferred', 'high', 'unacceptably-high'] as const;
export type BandName = (typeof bandNames)[number];

/** The band of a value; every value has exactly one. Throws RangeError where the edges do not rise. */
export const bandOf = (value: number, bands: Bands): BandName => {
  if (!(bands.low < bands.preferred && bands.preferred < bands.high && bands.high < bands.tooHigh))
    throw new RangeError('bands: edges must rise');
  if (value < bands.low) return 'unacceptably-low';
  if (value < bands.preferred) return 'low';
  if (value < bands.high) return 'preferred';
  return value <= bands.tooHigh ? 'high' : 'unacceptably-high';
};

export interface HardnessBands extends Bands {
  readonly hammerMass: number;
  readonly dropHeight: number;
  /** g, where the product warns */
  readonly warning: number;
  /** g */
  readonly headInjury: number;
}

export const hardnessBands = (values: WearValues): HardnessBands => ({
  low: values['surface.hardness.low'],
  preferred: values['surface.hardness.preferred'],
  high: values['surface.hardness.high'],
  tooHigh: values['surface.hardness.tooHigh'],
  hammerMass: values['surface.hammer.mass'],
  dropHeight: values['surface.hammer.drop'],
  warning: values['surface.warning'],
  headInjury: values['surface.headInjury'],
});

export const tractionBands = (values: WearValues): Bands => ({
  low: values['surface.traction.low'],
  preferred: values['surface.traction.preferred'],
  high: values['surface.traction.high'],
  tooHigh: values['surface.traction.tooHigh'],
});

export type Classed =
  | { readonly band: BandName; readonly warns: boolean; readonly aboveHeadInjury: boolean }
  | { readonly band: null; readonly reason: string };

/** The band of a first-drop reading of the bands' own hammer; no band, with the reason, for any other. */
export const hardnessClass = (reading: HardnessReading, bands: HardnessBands): Classed => {
  const reason = mismatch(hardnessReading(reading), { ...bands, dropNumber: 1 });
  if (reason) return { band: null, reason };
  return {
    band: bandOf(reading.value, bands),
    warns: reading.value >= bands.warning,
    aboveHeadInjury: reading.value > bands.headInjury,
  };
};

/** Limits with a preferred band inside an acceptable one; null where a side has none. */
export interface Limits {
  readonly acceptableLow: number | null;
  readonly preferredLow: number | null;
  readonly preferredHigh: number | null;
  readonly acceptableHigh: number | null;
}

export const withinLimits = (value: number, limits: Limits): 'preferred' | 'acceptable' | 'outside' => {
  const holds = (low: number | null, high: number | null): boolean =>
    (low === null || value >= low) && (high === null || value <= high);
  if (holds(limits.preferredLow, limits.preferredHigh)) return 'preferred';
  return holds(limits.acceptableLow, limits.acceptableHigh) ? 'acceptable' : 'outside';
};

/** Playing-quality limits of natural turf for football in the United Kingdom. @source canaway-1990 */
export const footballLimits = (
  values: WearValues,
): Readonly<Record<'hardness' | 'traction' | 'rebound' | 'roll' | 'evenness', Limits>> => ({
  hardness: {
    acceptableLow: values['surface.football.hardness.acceptableLow'],
    preferredLow: values['surface.football.hardness.preferredLow'],
    preferredHigh: values['surface.football.hardness.preferredHigh'],
    acceptableHigh: values['surface.football.hardness.acceptableHigh'],
  },
  traction: {
    acceptableLow: values['surface.football.traction.acceptableLow'],
    preferredLow: values['surface.football.traction.preferredLow'],
    preferredHigh: null,
    acceptableHigh: null,
  },
  rebound: {
    acceptableLow: values['surface.football.rebound.acceptableLow'],
    preferredLow: values['surface.football.rebound.preferredLow'],
    preferredHigh: values['surface.football.rebound.preferredHigh'],
    acceptableHigh: values['surface.football.rebound.acceptableHigh'],
  },
  roll: {
    acceptableLow: values['surface.football.roll.acceptableLow'],
    preferredLow: values['surface.football.roll.preferredLow'],
    preferredHigh: values['surface.football.roll.preferredHigh'],
    acceptableHigh: values['surface.football.roll.acceptableHigh'],
  },
  evenness: {
    acceptableLow: null,
    preferredLow: null,
    preferredHigh: values['surface.football.evenness.preferredHigh'],
    acceptableHigh: values['surface.football.evenness.acceptableHigh'],
  },
});
