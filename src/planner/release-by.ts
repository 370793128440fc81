import type { HourClock } from '#planner/shift-calendar.ts';
import type { BackwardTerm } from '#shared/vocabulary/plan.ts';
import type { LocalTime } from '#shared/vocabulary/primitives.ts';

/** The way back from a home date, in h each. */
export interface BackwardChain {
  /** From the test of the surface to the home date; painting; settling of the sod. */
  readonly certify: number;
  readonly paint: number;
  readonly settle: number;
  readonly lay: number;
  /** Stripping, hauling away and grading. */
  readonly strip: number;
  /** Kept in hand. */
  readonly contingency: number;
  /** From the first cut at the farm to the first roll on the field. */
  readonly harvestAndHaul: number;
  /** From the release to the first cut. */
  readonly notice: number;
}

export interface BackwardAnswer {
  readonly stripFrom: LocalTime;
  readonly layFrom: LocalTime;
  readonly firstCut: LocalTime;
  readonly releaseBy: LocalTime;
  /** The earlier of the release and the start of the strip: the last hour at which all of it can still be decided. */
  readonly latestDecision: LocalTime;
  /** Every term with the hour it leads to; first down to the strip, then from the laying down to the release. */
  readonly terms: readonly BackwardTerm[];
}

/**
 * The backward rule of the trade: latest decision = home date − certify − paint − settle − lay − strip and haul − contingency, along
 * the longest chain. Harvest and freight run beside the strip, and the farm's notice lies before the first cut. All in real
 * hours, so that a clock change between moves the wall clock, not the work.
 */
export const backwardRule = (homeDate: LocalTime, chain: BackwardChain, clock: HourClock): BackwardAnswer => {
  const terms: BackwardTerm[] = [];
  let hour = clock.hourOf(homeDate);
  const back = (name: string, hours: number): LocalTime => {
    hour -= hours;
    const at = clock.timeAt(hour);
    terms.push({ name, hours, at });
    return at;
  };
  back('Certify', chain.certify);
  back('Paint', chain.paint);
  back('Settle', chain.settle);
  back('In hand', chain.contingency);
  const layFrom = back('Lay', chain.lay);
  const atLay = hour;
  const stripFrom = back('Strip and haul', chain.strip);
  const atStrip = hour;
  hour = atLay;
  const firstCut = back('Harvest and freight', chain.harvestAndHaul);
  const releaseBy = back('Notice of the farm', chain.notice);
  return { stripFrom, layFrom, firstCut, releaseBy, latestDecision: clock.timeAt(Math.min(hour, atStrip)), terms };
};
