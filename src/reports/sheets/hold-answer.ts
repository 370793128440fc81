import { show, type UnitSystem } from '#shared/units/quantity.ts';
import { eventWords } from '#shared/wording/words.ts';
import type { KeptPlan, RecoveryPapers } from '#reports/recovery-papers.ts';
import { heading, list, sentence, small, strong, table, type Sheet } from '#reports/sheet.ts';
import { areaRange, bookedSpan, clearDays, moment, moneyRange, percent, planName, span, titleOf } from '#reports/wording.ts';
import { warningText } from '#shared/wording/warnings.ts';

export type HoldColour = 'green' | 'amber' | 'red';

/** Green: the plan reaches the chance that the venue asks for with a day in hand. Amber: with less in hand. Red: it does not reach it. */
export const holdColour = ({ plan }: KeptPlan, chanceNeeded: number): HoldColour => {
  const { zones } = plan.plan;
  if (zones.some((zone) => zone.chanceReady < chanceNeeded)) return 'red';
  return zones.some((zone) => zone.finish !== null && zone.slack < 24) ? 'amber' : 'green';
};

/** Whether turf will have to be replaced, from the range of the area that would need it. */
export const replacementWords = ({ forecast }: KeptPlan): string => {
  const { p10, p50, p90 } = forecast.result.replaceArea;
  return p10 > 0 ? 'certain' : p50 > 0 ? 'likely' : p90 > 0 ? 'possible' : 'unlikely';
};

const colourWords: Readonly<Record<HoldColour, string>> = {
  green: 'green, can be done with a day in hand',
  amber: 'amber, can be done with less than a day in hand',
  red: 'red, the chance asked for is not reached',
};

/** The answer to a hold, one side: each date asked for with its clear days, its state and its price. */
export const holdAnswer = (papers: RecoveryPapers, units: UnitSystem): Sheet => {
  const { venue } = papers;
  const dates: readonly KeptPlan[] = [papers, ...papers.alternatives];
  const colour = holdColour(papers, venue.rules.chanceNeeded);
  return {
    title: titleOf(papers, 'Answer to a hold'),
    format: 'standard',
    turned: false,
    pages: 1,
    parts: [
      strong(`${papers.booking.name}: ${colourWords[colour]}.`),
      sentence(
        `Event: ${eventWords[papers.booking.kind]}. Replacement of turf is ${replacementWords(papers)}. The field is asked to be ready with a chance of ${percent(venue.rules.chanceNeeded)} in every zone, at ${percent(venue.rules.coverNeeded)} live cover.`,
      ),
      heading('The dates asked for'),
      table(
        [
          ['Event', 2.4],
          ['On the field', 2.6],
          ['Home date', 1.8],
          ['Clear days', 0.9, 'right'],
          ['Answer', 1.1],
          ['New turf', 1.2],
          ['Area low / likely / high', 2, 'right'],
          ['Price low / likely / high', 2.4, 'right'],
          ['Release sod by', 1.8],
        ],
        dates.map((one, index) => {
          const booked = bookedSpan(one);
          const release = one.plan.plan.orders.map((order) => order.releaseBy).toSorted()[0];
          return [
            index === 0 ? one.booking.name : planName(papers, one),
            booked === null ? '–' : span(booked.on, booked.off),
            moment(one.forecast.result.homeDate.start),
            String(clearDays(one.booking, one.forecast.result.homeDate.start)),
            holdColour(one, venue.rules.chanceNeeded),
            replacementWords(one),
            areaRange(one.estimate.area, units),
            moneyRange(one.estimate.total, one.estimate.currency),
            release === undefined ? '–' : moment(release),
          ];
        }),
        '',
      ),
      ...(papers.alternatives.length === 0 ? [small('Other dates stand here when their plans are laid beside this one.')] : []),
      heading('On the condition that'),
      list(conditionsOf(papers, units), 'number'),
      heading('What decides most'),
      list(
        papers.forecast.result.warnings.length === 0
          ? ['Hours of cover by zone: every further day counts in the zones that lie longest.']
          : [
              'Hours of cover by zone: every further day counts in the zones that lie longest.',
              ...papers.forecast.result.warnings
                .slice(0, 3)
                .map((warning) => `Zone ${warning.zone}: ${warningText(warning, units)}.`),
            ],
      ),
    ],
  };
};

const conditionsOf = (papers: RecoveryPapers, units: UnitSystem): readonly string[] => {
  const { booking, plan, money, estimate } = papers;
  const booked = bookedSpan(papers);
  const order = plan.plan.orders[0];
  const reserve = papers.venue.farms.find((farm) => farm.id === order?.farm)?.reservePrice ?? null;
  return [
    ...(booked === null
      ? []
      : [`The last layer is off the turf by ${moment(booked.off)}; each zone at its own hour of the schedule.`]),
    ...(booking.layers.length === 0 ? [] : ['Floors as scheduled, by zone; nothing heavier without a change in writing.']),
    ...(order === undefined
      ? []
      : [
          `${show(estimate.area.high, 'area', units)} of sod are reserved now${reserve === null ? '' : ', at the farm’s reserve price'}, and released by ${moment(order.releaseBy)}.`,
        ]),
    money.terms === null
      ? 'Deposit, cap and claim period are agreed before the offer: none is entered yet.'
      : `Deposit, cap and claim period as in the field-use conditions; ${money.terms.payer} pays what is charged.`,
    'The venue may stop work on wet ground or in heat.',
  ];
};
