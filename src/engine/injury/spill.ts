import { spillAgents, type SpillAgent } from '#shared/vocabulary/booking.ts';

export { spillAgents, type SpillAgent };

/** Agents whose weeks are published, on bermudagrass only. @source johns-beard-1979 */
export const publishedAgents: readonly SpillAgent[] = ['petrol', 'motorOil', 'hydraulicOil', 'brakeFluid', 'grease'];

/** A spill as it was entered. */
export interface Spill {
  readonly agent: SpillAgent;
  /** share of the zone it lies on, 0–1 */
  readonly areaShare: number;
  /** min until it was treated (detergent for oils, flushing for the rest); null where it was not */
  readonly treatedAfter: number | null;
}

export interface SpillTraits {
  /** weeks to recover by agent */
  readonly treatedWeeks: Readonly<Record<SpillAgent, number>>;
  readonly untreatedWeeks: Readonly<Record<SpillAgent, number>>;
  /** min within which treatment counts */
  readonly treatWithin: number;
  /** d until the burn begins to show, and shows in full */
  readonly lagFirst: number;
  readonly lagLast: number;
}

/** Weeks until the spot is turf again. */
export const spillWeeks = (spill: Spill, traits: SpillTraits): number =>
  spill.treatedAfter !== null && spill.treatedAfter <= traits.treatWithin
    ? traits.treatedWeeks[spill.agent]
    : traits.untreatedWeeks[spill.agent];

/**
 * Share of the zone's cover that a spill leaves, some days after it happened.
 *
 * The spot is lost from the first hour and stays so until half of the published weeks have gone, then comes back in a straight line and
 * is whole when they are over. A factor on the zone's own cover: the published weeks stand, whatever the weather.
 * @param days since the spill; before it (below 0) everything is kept
 */
export const spillKept = (spill: Spill, days: number, traits: SpillTraits): number => {
  if (days < 0) return 1;
  const whole = spillWeeks(spill, traits) * 7;
  const back = whole === 0 ? 1 : Math.min(1, Math.max(0, (days - whole / 2) / (whole / 2)));
  return 1 - Math.min(1, Math.max(0, spill.areaShare)) * (1 - back);
};

/** The same as the eye sees it: the burn comes up between the first and the last day of its lag. */
export const spillKeptVisible = (spill: Spill, days: number, traits: SpillTraits): number => {
  const shown = Math.min(1, Math.max(0, (days - traits.lagFirst) / Math.max(1e-9, traits.lagLast - traits.lagFirst)));
  return 1 - shown * (1 - spillKept(spill, days, traits));
};

/** Whether the weeks are published for this grass, or carried over from bermudagrass, or assumed. */
export const spillEvidence = (
  agent: SpillAgent,
  onBermudagrass: boolean,
): 'published' | 'published for bermudagrass' | 'our assumption' =>
  !publishedAgents.includes(agent) ? 'our assumption' : onBermudagrass ? 'published' : 'published for bermudagrass';
