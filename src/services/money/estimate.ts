import { dateOf } from '#shared/calendar/local-time.ts';
import type { PlanRun } from '#shared/contract/contract.ts';
import {
  chargedPart,
  isPlanCost,
  sumOf,
  priceUnits,
  costWords,
  type Case,
  type Estimate,
  type EstimateLine,
  type MinorByCase,
  type MoneyTerms,
  type PriceBook,
  type PriceKind,
} from '#shared/vocabulary/money.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { priceOn, type PricedThing } from '#services/money/prices-on.ts';

export interface EstimateParts {
  readonly venue: Venue;
  readonly booking: Booking;
  readonly forecast: Forecast;
  readonly plan: PlanRun;
  readonly terms: MoneyTerms | null;
  readonly prices: PriceBook | null;
}

type ByCase = Readonly<Record<Case, number>>;
const same = (value: number): ByCase => ({ low: value, likely: value, high: value });
const each = (work: (one: Case) => number): MinorByCase => ({ low: work('low'), likely: work('likely'), high: work('high') });
const thousandth = (value: number): number => Math.round(value * 1000) / 1000;

/**
 * What the recovery costs in a kind, a usual and a hard season. Likely is the plan as it stands. Low and high scale everything that
 * follows from the area to be replaced with the forecast's lowest and highest tenth of that area, never above and never below the
 * plan; trucks are whole. A plan without sod keeps its quantities in all three.
 */
export const estimateOf = (parts: EstimateParts): Estimate => {
  const { venue, forecast, plan } = parts;
  const { orders, cost } = plan.plan;
  const planned = orders.reduce((sum, order) => sum + order.area, 0);
  const { p10, p90 } = forecast.replaceArea;
  const area: ByCase = planned === 0 ? same(0) : { low: Math.min(planned, p10), likely: planned, high: Math.max(planned, p90) };
  const scaled = (quantity: number): ByCase =>
    planned === 0 ? same(thousandth(quantity)) : each((one) => thousandth((quantity * area[one]) / planned));
  const trucksOf = (count: number): ByCase =>
    planned === 0 ? same(count) : each((one) => Math.ceil((count * area[one]) / planned - 1e-9));
  const lines: EstimateLine[] = [];
  const put = (thing: PricedThing, date: string, quantity: ByCase, words: string): void => {
    lines.push(lineOf(parts, thing, date, quantity, words));
  };
  const workDay = plan.plan.zones.flatMap((zone) => zone.jobs.map((job) => dateOf(job.start))).toSorted()[0] ?? dateOf(plan.now);
  for (const line of cost.lines)
    if (isPlanCost(line.kind) && line.kind !== 'sod' && line.kind !== 'freight')
      put({ kind: line.kind, of: null, cut: null }, workDay, scaled(line.quantity), costWords[line.kind]);
  for (const order of orders) {
    const farm = venue.farms.find((one) => one.id === order.farm)?.name ?? order.farm;
    const day = dateOf(order.trucks[0]?.cut ?? order.releaseBy);
    put({ kind: 'sod', of: order.farm, cut: order.cut }, day, scaled(order.ordered), `${farm}, ${order.cut} cut`);
    put({ kind: 'freight', of: order.farm, cut: null }, day, trucksOf(order.trucks.length), farm);
  }
  for (const hire of floorHire(parts)) {
    const thing: PricedThing = { kind: 'floor-hire', of: hire.covering, cut: null };
    if (priceOn(thing, hire.from, parts.prices, venue) !== null)
      put(thing, hire.from, same(thousandth(hire.quantity)), hire.covering);
  }
  const total = each((one) => lines.reduce((sum, line) => sum + (line.sum?.[one] ?? 0), 0));
  const uncapped = each((one) =>
    lines.reduce((sum, line) => sum + (line.sum === null ? 0 : chargedPart(line.sum[one], line.chargedShare)), 0),
  );
  const payer = each((one) => charge(uncapped[one], parts.terms));
  return {
    planId: plan.id,
    currency: venue.rules.currency,
    area: each((one) => thousandth(area[one])),
    trucks: each((one) => orders.reduce((sum, order) => sum + trucksOf(order.trucks.length)[one], 0)),
    lines,
    total,
    payer,
    venue: each((one) => total[one] - payer[one]),
    unpriced: [...new Set(lines.filter((line) => line.sum === null).map((line) => costWords[line.kind]))],
    basis: { members: forecast.members, replaceLow: p10, replaceHigh: p90 },
  };
};

/** What the payer bears of a chargeable sum: beyond the excess, up to the cap. */
const charge = (chargeable: number, terms: MoneyTerms | null): number =>
  terms === null ? 0 : Math.min(terms.cap ?? Infinity, Math.max(0, chargeable - terms.excess));

const lineOf = (
  { venue, terms, prices }: EstimateParts,
  thing: PricedThing,
  date: string,
  quantity: ByCase,
  words: string,
): EstimateLine => {
  const known = priceOn(thing, date, prices, venue);
  const clause = clauseFor(terms, thing.kind);
  return {
    kind: thing.kind,
    words,
    unit: priceUnits[thing.kind],
    price: known?.price ?? null,
    origin: known?.origin ?? 'no price is entered',
    quantity,
    sum: known === null ? null : each((one) => sumOf(quantity[one], known.price)),
    chargedShare: clause?.share ?? 0,
    clause: clause?.number ?? null,
  };
};

/** The clause that charges the largest share of a kind; the first of equals. */
const clauseFor = (terms: MoneyTerms | null, kind: PriceKind) =>
  (terms?.clauses ?? [])
    .filter((clause) => clause.kinds.includes(kind))
    .reduce<MoneyTerms['clauses'][number] | null>(
      (best, clause) => (best === null || clause.share > best.share ? clause : best),
      null,
    );

/** m² of each covering of the booking: hire is priced per m² and event. */
const floorHire = ({ booking, forecast }: EstimateParts): readonly { covering: string; from: string; quantity: number }[] => {
  const hires = new Map<string, { covering: string; from: string; zones: Set<string> }>();
  for (const layer of booking.layers) {
    const before = hires.get(layer.covering) ?? { covering: layer.covering, from: dateOf(layer.on), zones: new Set<string>() };
    before.zones.add(layer.zone);
    hires.set(layer.covering, { ...before, from: dateOf(layer.on) < before.from ? dateOf(layer.on) : before.from });
  }
  const areaOf = (letter: string): number => forecast.zones.find((zone) => zone.letter === letter)?.area ?? 0;
  return [...hires.values()].map(({ covering, from, zones }) => ({
    covering,
    from,
    quantity: [...zones].reduce((sum, letter) => sum + areaOf(letter), 0),
  }));
};
