/**
 * The bridge formula of US road law: how much a group of axles may carry.
 *
 *     W = 500 [L N/(N − 1) + 12 N + 36] lb, to the nearest 500
 *
 * N axles in the group, L feet between its outer axles. Every consecutive group must pass, the whole truck and each inner one. Two
 * consecutive tandems may carry a full tandem load each when their outer axles are 36 ft or more apart. A group of two
 * axles at most 8 ft apart is a tandem with its own limit; axles at most 40 in apart count as one. Loads in lb, places in ft.
 *
 * @source fhwa-bridge-2019
 */
export interface BridgeLimits {
  readonly single: number;
  readonly tandem: number;
  readonly gross: number;
  /** ft */
  readonly exceptionSpread: number;
}

export interface RoadAxle {
  /** lb */
  readonly load: number;
  /** ft from the front axle */
  readonly at: number;
}

/** lb. Throws RangeError for fewer than two axles. */
export const bridgeFormula = (axles: number, length: number): number => {
  if (!(Number.isInteger(axles) && axles >= 2)) throw new RangeError('axles: must be a whole number of at least 2');
  if (!(length >= 0)) throw new RangeError('length: must be at least 0');
  return Math.round((length * axles) / (axles - 1) + 12 * axles + 36) * 500;
};

export interface GroupOverLimit {
  /** First and last axle of the group, from 1. */
  readonly from: number;
  readonly to: number;
  readonly load: number;
  readonly limit: number;
}

const tandemReach = 8;

const isTandemPair = (group: readonly RoadAxle[]): boolean =>
  group.length === 4 && group[1]!.at - group[0]!.at <= tandemReach && group[3]!.at - group[2]!.at <= tandemReach;

/** lb that a consecutive group may carry. */
export const groupLimit = (group: readonly RoadAxle[], limits: BridgeLimits): number => {
  const length = group.at(-1)!.at - group[0]!.at;
  if (group.length === 1 || length <= 40 / 12) return limits.single;
  if (group.length === 2 && length <= tandemReach) return Math.min(limits.tandem, bridgeFormula(2, length));
  const byFormula = Math.min(limits.gross, bridgeFormula(group.length, length));
  return isTandemPair(group) && length >= limits.exceptionSpread ? Math.max(byFormula, 2 * limits.tandem) : byFormula;
};

/** Every group of axles that carries more than it may; empty where the truck passes. */
export const groupsOverLimit = (axles: readonly RoadAxle[], limits: BridgeLimits): readonly GroupOverLimit[] => {
  const over: GroupOverLimit[] = [];
  for (let from = 0; from < axles.length; from++)
    for (let to = from; to < axles.length; to++) {
      const group = axles.slice(from, to + 1);
      const load = group.reduce((sum, axle) => sum + axle.load, 0);
      const limit = groupLimit(group, limits);
      if (load > limit) over.push({ from: from + 1, to: to + 1, load, limit });
    }
  return over;
};

/** kg and kN in one pound. */
export const kgPerPound = 0.45359237;
export const kNPerPound = 0.0044482216152605;
