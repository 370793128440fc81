import type { Shoe, WearSettings } from '#engine/wear/wear-kept.ts';
import { shoes } from '#engine/wear/wear-kept.ts';
import type { WearParameterName, WearValues } from '#shared/parameters/wear.ts';
import { activities, zoneUses } from '#shared/vocabulary/booking.ts';
import { grasses, soils } from '#shared/vocabulary/turf.ts';

const gather = <Key extends string>(
  keys: readonly Key[],
  values: WearValues,
  name: (key: Key) => WearParameterName,
): Readonly<Record<Key, number>> =>
  Object.fromEntries(keys.map((key) => [key, values[name(key)]])) as Readonly<Record<Key, number>>;

/** Gathers the settings of wear out of a full set of values. */
export const wearSettings = (values: WearValues): WearSettings => ({
  walking: {
    half: {
      lawn: values['wear.walk.half.lawn'],
      tussock: values['wear.walk.half.tussock'],
      fern: values['wear.walk.half.fern'],
    },
    shape: values['wear.walk.shape'],
    step: values['wear.walk.step'],
    lane: values['wear.walk.lane'],
  },
  shoe: gather<Shoe>(shoes, values, (shoe) => `wear.shoe.${shoe}`),
  wet: {
    from: values['wear.wet.from'],
    full: values['wear.wet.full'],
    curve: values['wear.wet.curve'],
    factor: gather(soils, values, (soil) => `wear.wet.${soil}`),
  },
  gamesToHalf: gather(soils, values, (soil) => `wear.stud.half.${soil}`),
  tolerance: {
    stud: gather(grasses, values, (grass) => `wear.tolerance.stud.${grass}`),
    foot: gather(grasses, values, (grass) => `wear.tolerance.foot.${grass}`),
    wheel: gather(grasses, values, (grass) => `wear.tolerance.wheel.${grass}`),
  },
  steps: gather(activities, values, (activity) => `wear.steps.${activity}`),
  zone: gather(zoneUses, values, (use) => `wear.zone.${use}`),
  crownShare: values['wear.crownShare'],
  wheelHalf: values['wear.wheel.half'],
  rutHalf: { leaf: values['wear.rut.halfLeaf'], crowns: values['wear.rut.halfCrowns'] },
  crushHalf: { leaf: values['wear.crush.halfLeaf'], crowns: values['wear.crush.halfCrowns'] },
});
