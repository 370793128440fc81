import type { Member } from '#engine/forecast/member.ts';
import type { Tolerances } from '#engine/forecast/tolerances.ts';
import type { TurfWater } from '#engine/forecast/turf-water.ts';
import type { LaidFloor, Workshop } from '#engine/forecast/workshop.ts';
import { causes } from '#engine/injury/causes.ts';
import { frostOdds, hardeningAt, keptAfterFrost } from '#engine/injury/frost.ts';
import { keptAfterHeat } from '#engine/injury/heat-dose.ts';
import { crownsKeptWet, leafKeptWet, oxygenDebt } from '#engine/injury/waterlogging.ts';
import { injureAt } from '#engine/recovery/injure.ts';

const HEAT = causes.indexOf('heat');
const FROST = causes.indexOf('frost');
const WETNESS = causes.indexOf('wetness');

/** Doses that build up over a covering. */
export class InjuryState {
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
export const suffer = (
  { scene, window, stand }: Workshop,
  floors: readonly LaidFloor[],
  crown: Float64Array,
  day: number,
  member: Member,
  water: TurfWater,
  state: InjuryState,
): void => {
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
  for (const laid of floors) {
    const from = Math.max(start, laid.stretch.from);
    const until = Math.min(end, laid.stretch.until);
    for (let hour = from; hour < until; hour++) {
      const temperature = crown[hour - window.from]!;
      state.heatDose += Math.exp((temperature - tolerances.heat.halfKill) * rate) / 96;
      if (temperature < 0) state.frostOdds = frostOdds(state.frostOdds, temperature, 1, halfKill, tolerances.frost);
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
