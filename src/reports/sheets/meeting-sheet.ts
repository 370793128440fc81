import { daysBetween, dateOf } from '#shared/calendar/local-time.ts';
import { figure, show, type UnitSystem, showMoney } from '#shared/units/quantity.ts';
import type { Cause, ZoneForecast } from '#shared/vocabulary/forecast.ts';
import { programmeWords, verdictWords } from '#shared/wording/words.ts';
import { mapOf } from '#reports/drawings.ts';
import type { KeptPlan, RecoveryPapers } from '#reports/recovery-papers.ts';
import { heading, list, sentence, small, strong, table, type Part, type Sheet } from '#reports/sheet.ts';
import {
  areaRange,
  atLeast,
  bookedSpan,
  counted,
  countRange,
  daysShort,
  mainCause,
  moment,
  moneyRange,
  percent,
  planName,
  shortened,
  titleOf,
  zonesInWords,
} from '#reports/wording.ts';

/** What a manager can do about each cause, in the words of the trade. */
const levers: Readonly<Record<Cause, string>> = {
  light: 'lay later, lift earlier, or keep the stage on hard standing',
  heat: 'lift lanes at night, water the floor on hot afternoons, another floor',
  frost: 'leave cover on through the frost, or another season',
  wear: 'a floor under the standing crowd, fewer shows',
  load: 'cranes and trucks on hard standing, wider spreaders, another gate',
  wetness: 'hold machines until the ground is firm, no sealed sheet after rain',
  spill: 'spill kits at every machine, no refuelling on the field',
};

const causeSaid = (zone: ZoneForecast, cause: Cause, units: UnitSystem): string => {
  switch (cause) {
    case 'light':
      return `${figure(Math.max(zone.hoursDark, zone.hoursCovered > 0 && zone.hoursDark === 0 ? zone.hoursCovered : 0) / 24, 1)} days ${zone.hoursDark > 0 ? 'without light' : 'under a floor'}`;
    case 'heat':
      return zone.crownTemperature === null
        ? 'heat under the floor'
        : `up to ${show(zone.crownTemperature.highest, 'temperature', units)} under the floor`;
    case 'frost':
      return 'frost';
    case 'wear':
      return 'the feet of the crowd';
    case 'load':
      return 'wheels and legs on the turf';
    case 'wetness':
      return 'wet ground shut in';
    case 'spill':
      return 'spills';
  }
};

/** One sentence for a zone in trouble: what is wrong, why, what would change it, what is planned. */
export const troubleOf = ({ venue, plan }: RecoveryPapers, zone: ZoneForecast, units: UnitSystem): string => {
  const cause = mainCause(zone.causes);
  const short = daysShort(zone, venue.rules.coverNeeded);
  const way = plan.plan.zones.find((one) => one.zone === zone.letter);
  const planned =
    way === undefined
      ? 'no work is planned'
      : `planned: ${programmeWords[way.programme]}${way.finish === null ? '' : `, done ${moment(way.finish)}`}`;
  return (
    `${zone.letter} ${shortened(zone.name, mostName)}, ${show(zone.area, 'area', units)}, ${verdictWords[zone.verdict]}` +
    `${short === null ? ' (left alone, no end in sight)' : short > 0 ? ` (left alone, ${short} days short)` : ''}` +
    `${cause === null ? '' : `, from ${causeSaid(zone, cause, units)}; lever: ${levers[cause]}`}; ${planned}.`
  );
};

/** Characters of a name on the one side; the recovery report has it whole. */
const mostName = 36;

/**
 * How high the map is, pt, and how many zones get a sentence of their own beside it: the more rows the tables below have, the less, so
 * that the sheet keeps to its one side.
 */
const roomAbove = ({ alternatives, plan }: RecoveryPapers): { readonly map: number; readonly sentences: number } => {
  const more = Math.max(0, alternatives.length + plan.plan.decisions.length - 4);
  return { map: Math.max(180, 270 - 20 * more), sentences: Math.max(4, 7 - more) };
};

/** What is decided in the meeting, on one side: the map, the zones in trouble, price and trucks, the alternatives, the last hours. */
export const meetingSheet = (papers: RecoveryPapers, units: UnitSystem): Sheet => {
  const { forecast } = papers;
  const trouble = forecast.result.zones
    .filter((zone) => zone.verdict !== 'play')
    .toSorted((a, b) => rank(a) - rank(b) || b.area - a.area);
  const { map, sentences } = roomAbove(papers);
  const named = trouble.slice(0, sentences);
  const more = trouble.slice(sentences);
  return {
    title: titleOf(papers, 'Meeting sheet'),
    format: 'standard',
    turned: false,
    pages: 1,
    parts: [
      strong(headlineOf(papers)),
      {
        part: 'columns',
        share: 0.42,
        left: [{ part: 'maps', maps: [mapOf(papers, 'verdict')], height: map, legend: 'verdict' }],
        right: [
          heading('Zones in trouble'),
          named.length === 0
            ? sentence('No zone: every zone plays as it is.')
            : list(named.map((zone) => troubleOf(papers, zone, units))),
          ...(more.length > 0
            ? [
                sentence(
                  `And ${counted(more.length, 'smaller zone')}: ${more.map((zone) => zone.letter).join(', ')}. The recovery report has all.`,
                ),
              ]
            : []),
        ],
      },
      small(
        'A number of days on the map says how long a zone left to itself would still need after the home date, at the pace of its last week.',
      ),
      ...moneyPart(papers, units),
      ...alternativesPart(papers, units),
      heading('Last hours to decide'),
      table(
        [
          ['Decision', 5],
          ['Latest', 2],
          ['From now', 1.4, 'right'],
        ],
        papers.plan.plan.decisions.map((decision) => [decision.name, moment(decision.at), timeLeft(decision.slack)]),
        'Nothing is left to decide.',
      ),
      heading('Past cases here'),
      papers.evidence.pastCases.length === 0
        ? sentence('No past event with an inspection is recorded at this venue.')
        : list(papers.evidence.pastCases.slice(0, 3)),
    ],
  };
};

const rank = (zone: ZoneForecast): number => (zone.verdict === 'replace' ? 0 : 1);
const timeLeft = (hours: number): string => (Math.abs(hours) >= 48 ? `${Math.floor(hours / 24)} d` : `${Math.floor(hours)} h`);

const headlineOf = ({ forecast, plan, booking }: RecoveryPapers): string => {
  const weakest = plan.plan.zones.toSorted((a, b) => a.chanceReady - b.chanceReady)[0];
  const booked = bookedSpan({ booking });
  const alone = percent(forecast.result.chanceAllReady);
  const left =
    booked === null
      ? ''
      : `, ${daysBetween(dateOf(booked.off), dateOf(forecast.result.homeDate.start))} days after the last layer`;
  return weakest === undefined
    ? `Every zone is ready on ${moment(forecast.result.homeDate.start)} without work.`
    : `${forecast.result.homeDate.name} is ${moment(forecast.result.homeDate.start)}${left}. Left alone the whole field is ready with a chance of ${alone}; with the plan every zone with ${atLeast(weakest.chanceReady)}.`;
};

const moneyPart = ({ estimate, money }: RecoveryPapers, units: UnitSystem): readonly Part[] => {
  const payer = money.terms?.payer;
  return [
    heading('Price, trucks, and who pays'),
    table(
      [
        ['', 2],
        ['Low', 2, 'right'],
        ['Likely', 2, 'right'],
        ['High', 2, 'right'],
      ],
      [
        ['Turf replaced', ...byCase((one) => show(estimate.area[one], 'area', units))],
        ['Trucks', ...byCase((one) => String(estimate.trucks[one]))],
        ['Price', ...byCase((one) => showMoney(estimate.total[one], estimate.currency))],
        [
          payer === undefined ? 'Charged' : `Paid by ${payer}`,
          ...byCase((one) => showMoney(estimate.payer[one], estimate.currency)),
        ],
        ['Paid by the venue', ...byCase((one) => showMoney(estimate.venue[one], estimate.currency))],
      ],
      '',
    ),
    ...(estimate.unpriced.length > 0 ? [sentence(`Without ${estimate.unpriced.join(', ')}: no price is entered.`)] : []),
    ...(payer === undefined ? [sentence('No terms are agreed yet: nothing can be charged to anybody.')] : []),
  ];
};

const byCase = (said: (one: 'low' | 'likely' | 'high') => string): readonly string[] => [
  said('low'),
  said('likely'),
  said('high'),
];

const alternativesPart = (papers: RecoveryPapers, units: UnitSystem): readonly Part[] => [
  heading('Alternatives'),
  table(
    [
      ['', 2.8],
      ['Covered', 1, 'right'],
      ['Replaced', 2.7, 'right'],
      ['Trucks', 1.5, 'right'],
      [`Price, ${papers.estimate.currency}`, 3, 'right'],
      ['Playable', 1.8],
      ['Chance', 1, 'right'],
      ['Last hour', 1.8],
      ['The promoter gives up', 2.6],
    ],
    [papers as KeptPlan, ...papers.alternatives].map((one, index) => [
      index === 0 ? 'This plan' : shortened(planName(papers, one), mostName),
      `${figure(Math.max(0, ...one.forecast.result.zones.map((zone) => zone.hoursCovered)) / 24, 1)} d`,
      areaRange(one.estimate.area, units),
      countRange(one.estimate.trucks),
      moneyRange(one.estimate.total, one.estimate.currency).slice(4),
      playableFrom(one),
      percent(Math.min(1, ...one.plan.plan.zones.map((zone) => zone.chanceReady))),
      firstDecision(one),
      index === 0 ? '–' : givesUp(papers, one),
    ]),
    '',
  ),
  ...(papers.alternatives.length === 0 ? [sentence('No other plan was laid beside this one.')] : []),
];

const playableFrom = ({ plan }: KeptPlan): string => {
  const last = plan.plan.zones
    .flatMap((zone) => (zone.finish === null ? [] : [zone.finish]))
    .toSorted()
    .at(-1);
  return last === undefined ? 'as it is' : moment(last);
};

const firstDecision = ({ plan }: KeptPlan): string => {
  const first = plan.plan.decisions.map((decision) => decision.at).toSorted()[0];
  return first === undefined ? '–' : moment(first);
};

/** How another booking differs from ours, as far as the schedule tells. */
export const givesUp = ({ booking }: KeptPlan, other: KeptPlan): string => {
  const hours = (one: KeptPlan['booking']): number =>
    one.layers.reduce((sum, layer) => sum + (Date.parse(`${layer.off}Z`) - Date.parse(`${layer.on}Z`)) / 3_600_000, 0) /
    Math.max(1, one.layers.length);
  const [first, second] = [bookedSpan({ booking }), bookedSpan(other)];
  const said: string[] = [];
  const gone = booking.zones.filter((zone) => !other.booking.zones.some((one) => one.letter === zone.letter));
  if (gone.length > 0) said.push(zonesInWords(gone.map((zone) => zone.letter)));
  if (first && second && first.on.slice(0, 10) !== second.on.slice(0, 10)) said.push(`load-in ${moment(second.on)}`);
  if (first && second && first.off !== second.off) said.push(`off by ${moment(second.off)}`);
  const floors = booking.zones.filter(
    (zone) => floorsIn(booking, zone.letter) !== floorsIn(other.booking, zone.letter) && !gone.includes(zone),
  );
  if (floors.length > 0) said.push(`another floor in ${floors.map((zone) => zone.letter).join(', ')}`);
  const fewer = hours(booking) - hours(other.booking);
  if (said.length === 0 && Math.abs(fewer) >= 1) said.push(`${Math.round(fewer)} h of cover a layer`);
  return said.length === 0 ? 'nothing: another way to recover' : said.join('; ');
};

const floorsIn = (booking: KeptPlan['booking'], letter: string): string =>
  booking.layers
    .filter((layer) => layer.zone === letter)
    .map((layer) => layer.covering)
    .toSorted()
    .join(' ');
