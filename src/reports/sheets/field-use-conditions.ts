import { addDays, dateOf, hoursBetween } from '#shared/calendar/local-time.ts';
import { figure, show, type UnitSystem } from '#shared/units/quantity.ts';
import { costWords, exactMoney, type PriceLine } from '#shared/vocabulary/money.ts';
import { cautions, zoneUseWords } from '#shared/wording/words.ts';
import type { RecoveryPapers } from '#reports/recovery-papers.ts';
import { heading, list, sentence, small, strong, table, type Sheet } from '#reports/sheet.ts';
import { bookedSpan, counted, coveringName, dayWords, moment, percent, titleOf, zonesInWords } from '#reports/wording.ts';

/** The exhibit of a contract: zones, floors and hours in numbers, and the words that settle who does and who pays what. */
export const fieldUseConditions = (papers: RecoveryPapers, units: UnitSystem): Sheet => {
  const { booking, venue } = papers;
  return {
    title: titleOf(papers, 'Field-use conditions'),
    format: 'standard',
    turned: false,
    pages: 2,
    parts: [
      strong(`Conditions for the use of the field of ${venue.name} by ${booking.name}.`),
      heading('1  Zones, floors and hours'),
      table(
        [
          ['Zone', 2.6],
          ['Use', 1.6],
          ['Floor', 3],
          ['On, not before', 1.8],
          ['Off, not after', 1.8],
          ['Most', 0.9, 'right'],
        ],
        booking.zones.flatMap((zone) => {
          const layers = booking.layers.filter((layer) => layer.zone === zone.letter);
          return layers.length === 0
            ? [[`${zone.letter}  ${zone.name}`, zoneUseWords[zone.use], 'no floor', '–', '–', '–']]
            : layers.map((layer) => [
                `${zone.letter}  ${zone.name}`,
                zoneUseWords[zone.use],
                coveringName(papers, layer.covering),
                moment(layer.on),
                moment(layer.off),
                `${Math.round(hoursBetween(layer.on, layer.off, venue.place.timeZone))} h`,
              ]);
        }),
        'No zone is drawn yet.',
      ),
      heading('2  Driving and loads'),
      list(drivingOf(papers, units), 'number'),
      heading('3  Right to stop, records, handback'),
      list(recordsOf(papers), 'number'),
      heading('4  Replacement and money'),
      list(moneyOf(papers, units), 'number'),
      ...clausePart(papers),
      { part: 'blanks', labels: ['For the venue, date', 'For the promoter, date'] },
      small(
        `${cautions.structures} A draft from the schedule as booked: to be read by the venue’s own lawyer before it is signed.`,
      ),
    ],
  };
};

const drivingOf = ({ booking, vehicles, venue }: RecoveryPapers, units: UnitSystem): readonly string[] => {
  const routes = booking.zones.filter((zone) => zone.use === 'haul-route').map((zone) => zone.letter);
  const machines = [...new Set(booking.traffic.map((pass) => pass.vehicle))].map(
    (id) => vehicles.find((one) => one.id === id)?.name ?? id,
  );
  return [
    routes.length === 0
      ? 'No route for trucks is drawn: no truck drives on turf.'
      : `Trucks keep to ${zonesInWords(routes)}. Turning, waiting and refuelling are on hard standing.`,
    `Nothing drives straight on turf above ${show(venue.rules.groundPressure, 'pressure', units)} of ground pressure.`,
    ...(machines.length === 0 ? [] : [`Machines accepted: ${machines.join('; ')}. Any other needs a change in writing.`]),
    'Someone of the grounds crew is on the field whenever anyone works there, and has the last word on routes.',
    'No stakes and no digging without clearance of buried services.',
  ];
};

const recordsOf = (papers: RecoveryPapers): readonly string[] => {
  const booked = bookedSpan(papers);
  return [
    'The head of grounds may stop work on wet ground, in heat under a floor, or when lightning is near. Time so lost is not overrun.',
    `Before the first truck${booked === null ? '' : ` (${moment(booked.on)})`} both sides walk the field, take readings and photographs at fixed points, and sign the record.`,
    `Each zone is handed back in writing when it is clear${booked === null ? '' : `, the last by ${moment(booked.off)}`}, with the same readings and photographs at the same points.`,
    'Readings again after 24 h, 72 h and 7 days: damage that shows late is damage of the event.',
    'Every spill is told at once with product, amount and place; whoever spilled keeps the place closed until grounds release it.',
    'These records are accepted as evidence. Silence waives nothing. A dispute goes to an independent agronomist named by both.',
  ];
};

const moneyOf = (papers: RecoveryPapers, units: UnitSystem): readonly string[] => {
  const { venue, money, estimate } = papers;
  const { terms, currency } = money;
  const booked = bookedSpan(papers);
  const said = (value: number): string => exactMoney(value, currency);
  const overrun = priceToday(papers, 'overrun');
  const handedBack = terms?.handedBack ?? booked?.off ?? null;
  return [
    `A zone is replaced when its live cover is below ${percent(venue.rules.coverNeeded)} or its ruts are deeper than ${show(venue.rules.rutAllowed, 'smallLength', units)} and the plan shows no other way to the next home date.`,
    `Forecast of the area to be replaced: ${show(estimate.area.low, 'area', units)} low, ${show(estimate.area.likely, 'area', units)} likely, ${show(estimate.area.high, 'area', units)} high; charged is what is measured.`,
    overrun === null
      ? 'Overrun of the load-out: no rate is entered; it is agreed before signature.'
      : `Overrun of the load-out: ${said(overrun)} for each begun hour after the hours of part 1.`,
    ...(terms === null
      ? ['Deposit, cap and claim period: none is entered; they are agreed before signature.']
      : [
          `Deposit ${said(terms.deposit)}, held until the claim is settled. ${terms.cap === null ? 'No cap.' : `Cap ${said(terms.cap)}.`}${terms.excess > 0 ? ` The venue bears the first ${said(terms.excess)}.` : ''}`,
          `Claim within ${counted(terms.claimDays, 'day')} of handback${handedBack === null ? '' : ` (by ${dayWords(addDays(dateOf(handedBack), terms.claimDays))})`}; damage that shows late within ${counted(terms.lateDays, 'day')}${handedBack === null ? '' : ` (by ${dayWords(addDays(dateOf(handedBack), terms.lateDays))})`}. Interim payment on account.`,
          `Payment by ${terms.payer}: labour at the rates below, sod with freight at the farm’s invoice.`,
        ]),
    `Rates: ${rates(papers)}.`,
  ];
};

const priceToday = ({ money, plan }: RecoveryPapers, kind: PriceLine['kind']): number | null => {
  const day = plan.now.slice(0, 10);
  const line = money.prices?.lines.find(
    (one) => one.kind === kind && one.from <= day && (one.until === null || day <= one.until),
  );
  return line?.price ?? null;
};

const rates = (papers: RecoveryPapers): string => {
  const { venue, money } = papers;
  const hour = priceToday(papers, 'labour') ?? venue.workforce.hourPrice;
  const overtime = priceToday(papers, 'overtime') ?? venue.workforce.overtimePrice;
  const said = (value: number | null): string =>
    value === null ? 'not entered' : `${exactMoney(value, money.currency)} an hour`;
  return `labour ${said(hour)}, overtime ${said(overtime)}`;
};

const clausePart = ({ money }: RecoveryPapers): Sheet['parts'] =>
  money.terms === null || money.terms.clauses.length === 0
    ? [sentence('No clause is entered yet.')]
    : [
        table(
          [
            ['Clause', 1],
            ['Words', 6],
            ['Covers', 3],
            ['Charged', 1, 'right'],
          ],
          money.terms.clauses.map((clause) => [
            clause.number,
            clause.words,
            clause.kinds.map((kind) => costWords[kind]).join(', '),
            `${figure(clause.share, 0)} %`,
          ]),
          '',
        ),
      ];
