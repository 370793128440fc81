import { addHours, clockOf, hoursBetween } from '#shared/calendar/local-time.ts';
import { sources } from '#shared/sources/sources.ts';
import { citation } from '#shared/sources/source.ts';
import { figure, show, type UnitSystem, showMoney } from '#shared/units/quantity.ts';
import { cases, costWords, entryKinds, exactMoney, type EntryKind } from '#shared/vocabulary/money.ts';
import { amountLines, costAmount, wateringLines } from '#shared/wording/amounts.ts';
import { basisWords } from '#shared/wording/estimates.ts';
import { cautions, eventWords, jobWords, programmeWords, verdictWords, warningWords } from '#shared/wording/words.ts';
import { chartOf, mapOf } from '#reports/drawings.ts';
import type { RecoveryPapers } from '#reports/recovery-papers.ts';
import { heading, list, sentence, small, smallList, strong, table, type Part, type Picture, type Sheet } from '#reports/sheet.ts';
import {
  atLeast,
  bookedSpan,
  causesInWords,
  compare,
  compareLetters,
  counted,
  dayWords,
  farmName,
  hourWords,
  jobLine,
  jobsInOrder,
  loadedInAll,
  moment,
  moneyRange,
  orDash,
  percent,
  rolledUp,
  span,
  titleOf,
  zoneName,
  zonesInWords,
} from '#reports/wording.ts';
import { warningText } from '#shared/wording/warnings.ts';

/** The sentences a manager reads first: ready, when, cost. */
export const headlineOf = (papers: RecoveryPapers, units: UnitSystem): readonly string[] => {
  const { forecast, plan: run, estimate, money } = papers;
  const { plan } = run;
  const weakest = plan.zones.toSorted((a, b) => a.chanceReady - b.chanceReady)[0];
  const last = plan.zones
    .flatMap((zone) => (zone.finish === null ? [] : [zone.finish]))
    .toSorted()
    .at(-1);
  const laid = plan.orders.reduce((sum, order) => sum + order.area, 0);
  const trucks = plan.orders.reduce((sum, order) => sum + order.trucks.length, 0);
  const release = plan.orders.map((order) => order.releaseBy).toSorted()[0];
  const homeDate = moment(forecast.result.homeDate.start);
  return [
    weakest === undefined
      ? `Every zone is ready in the forecast on ${homeDate} without work.`
      : `Ready in the forecast on ${homeDate}: ${atLeast(weakest.chanceReady)} chance in every zone (weakest ${weakest.zone}).`,
    `${last === undefined ? 'No job is needed.' : `The last zone is done on ${moment(last)}.`} ${
      laid > 0
        ? `${show(laid, 'area', units)} of sod in ${counted(trucks, 'truckload')}; release it by ${moment(release!)}.`
        : 'No sod is needed.'
    }`,
    `Cost ${showMoney(estimate.total.likely, estimate.currency)} likely (low / likely / high ${moneyRange(estimate.total, estimate.currency)})${
      estimate.unpriced.length > 0 ? `, without ${estimate.unpriced.join(', ')}: no price is entered` : ''
    }; ${money.account.total === 0 ? 'no cost is entered yet' : `${exactMoney(money.account.total, money.currency)} entered so far, ${exactMoney(money.account.claim, money.currency)} of it charged`}.`,
  ];
};

/** The recovery report for management: ready, when, cost; before and after; plan and fact; sod; money; what to mind. */
export const recoveryReport = (papers: RecoveryPapers, units: UnitSystem): Sheet => {
  const [first, ...others] = headlineOf(papers, units);
  const chart = chartOf(papers, papers.plan.plan.zones.length > 14 ? 11 : 14, false);
  return {
    title: titleOf(papers, 'Recovery report'),
    format: 'standard',
    turned: false,
    pages: 4,
    parts: [
      strong(first!),
      ...others.map(sentence),
      {
        part: 'maps',
        maps: [mapOf(papers, 'after'), mapOf(papers, 'home'), mapOf(papers, 'recovered')],
        height: 205,
        legend: 'cover',
      },
      ...eventPart(papers, units),
      heading('Recovery'),
      ...(chart === null ? [sentence('No job is planned: every zone is left to itself.')] : [{ part: 'chart' as const, chart }]),
      ...waysPart(papers),
      ...planAgainstFact(papers),
      ...readingsPart(papers),
      ...sodPart(papers, units),
      ...worksPart(papers, units),
      ...costPart(papers, units),
      ...incidentsPart(papers, units),
      ...risksPart(papers, units),
      ...lessonsPart(papers),
      ...sourcesPart(papers),
      heading('Signed'),
      { part: 'blanks', labels: ['Head of grounds, date', 'Operations, date', 'Finance, date'] },
    ],
  };
};

const eventPart = (papers: RecoveryPapers, units: UnitSystem): readonly Part[] => {
  const { booking, forecast, evidence } = papers;
  const booked = bookedSpan(papers);
  const { members, zones } = forecast.result;
  return [
    heading('The event, zone by zone'),
    sentence(
      `Event: ${eventWords[booking.kind]}${booked === null ? '' : `, on the turf ${span(booked.on, booked.off)} as booked`}. ${
        evidence.hours.length === 0
          ? 'The hours that the floors lay in fact are not recorded yet.'
          : 'In brackets the hours that each floor lay in fact.'
      }`,
    ),
    table(
      [
        ['Zone', 3.2],
        ['Turf', 1.6, 'right'],
        ['Covered', 2.1, 'right'],
        ['Before', 1.2, 'right'],
        ['After', 1, 'right'],
        ['Home date, nothing done', 2, 'right'],
        ['Chance', 1.2, 'right'],
        ['What took it', 4.4],
        ['Left alone', 2.2],
      ],
      zones.map((zone) => [
        zoneName(zone),
        show(zone.area, 'area', units),
        coveredWords(papers, zone.letter, zone.hoursCovered),
        percent(zone.coverBefore.p50),
        percent(zone.coverAfter.p50),
        members === 1
          ? percent(zone.coverHome.p50)
          : `${percent(zone.coverHome.p50)} (${Math.round(100 * zone.coverHome.p10)}–${Math.round(100 * zone.coverHome.p90)})`,
        percent(zone.chanceReady),
        causesInWords(zone.causes),
        verdictWords[zone.verdict],
      ]),
      '',
    ),
    small(
      'Cover is live green cover. A member is one possible season, drawn with its own weather and its own doubtful numbers: cover is that of the middle member, in brackets the range that holds eight of ten; chance is the share of members that are ready with nothing done; what took it are shares of the loss.',
    ),
  ];
};

/** Hours as first booked, and in brackets those in fact where they are recorded. */
const coveredWords = ({ evidence, venue }: RecoveryPapers, letter: string, booked: number): string => {
  const fact = evidence.hours.find((one) => one.zone === letter);
  if (fact === undefined) return booked > 0 ? `${booked} h` : '–';
  const { timeZone } = venue.place;
  const before =
    fact.bookedOn === null || fact.bookedOff === null
      ? '–'
      : `${Math.round(hoursBetween(fact.bookedOn, fact.bookedOff, timeZone))} h`;
  return `${before} (${Math.round(hoursBetween(fact.on, fact.off, timeZone))} h)`;
};

const waysPart = ({ plan }: RecoveryPapers): readonly Part[] => [
  table(
    [
      ['Zone', 0.7],
      ['Way back', 2],
      ['Jobs', 8.2],
      ['Latest', 1.9],
      ['In hand', 1.1, 'right'],
      ['Chance', 1.2, 'right'],
    ],
    plan.plan.zones.map((zone) => [
      zone.zone,
      programmeWords[zone.programme],
      orDash(zone.jobs.map(jobLine).join('; ') + (zone.dailyHours > 0 ? '; then water daily' : '')),
      zone.finish === null ? '–' : moment(zone.latestFinish),
      zone.finish === null ? '–' : `${Math.floor(zone.slack)} h`,
      zone.chanceInRain === undefined
        ? percent(zone.chanceReady)
        : `${percent(zone.chanceReady)}, in rain ${percent(zone.chanceInRain)}`,
    ]),
    'No zone was covered.',
  ),
  ...(plan.plan.fieldJobs.length > 0 ? [sentence(`Whole field: ${plan.plan.fieldJobs.map(jobLine).join('; ')}.`)] : []),
];

/** Jobs that are over, beside what the first kept plan had for them; and what this plan moved. */
const planAgainstFact = (papers: RecoveryPapers): readonly Part[] => {
  const { plan, earlier, venue } = papers;
  const first = earlier.at(-1) ?? plan;
  const planned = new Map(first.plan.zones.flatMap((zone) => zone.jobs).map((job) => [`${job.zone} ${job.job}`, job]));
  const over = jobsInOrder(papers).filter((job) => job.done);
  return [
    heading('Plan against fact'),
    table(
      [
        ['Zone', 0.8],
        ['Job', 2],
        ['First planned', 3.4],
        ['In fact', 3.4],
        ['Later by', 1.2, 'right'],
        ['People-hours', 1.3, 'right'],
      ],
      over.map((job) => {
        const before = planned.get(`${job.zone} ${job.job}`);
        const hours = job.work.reduce((sum, one) => sum + one.hours, 0) || hoursBetween(job.start, job.end, venue.place.timeZone);
        return [
          job.zone ?? 'field',
          jobWords[job.job],
          before === undefined ? '–' : span(before.start, before.end),
          span(job.start, job.end),
          before === undefined ? '–' : hourWords(hoursBetween(before.end, job.end, venue.place.timeZone)),
          figure(hours * job.crew, 1),
        ];
      }),
      'No job is reported as done yet: everything above is planned.',
    ),
    ...(plan.plan.moved.length > 0
      ? [
          sentence(
            `Moved against the plan before: ${plan.plan.moved.map((one) => `${one.zone} ${jobWords[one.job]} ${moment(one.from)} → ${moment(one.to)}`).join('; ')}.`,
          ),
        ]
      : []),
  ];
};

/** Newest reading of each kind in each zone, against what is asked. */
const readingsPart = ({ evidence, venue }: RecoveryPapers): readonly Part[] => {
  const newest = new Map<string, readonly string[]>();
  for (const inspection of evidence.inspections)
    for (const reading of inspection.readings)
      newest.set(`${reading.zone} ${reading.what}`, [
        reading.zone,
        reading.what,
        orDash(reading.forecast),
        reading.value,
        orDash(reading.required),
        reading.met === null ? '–' : reading.met ? 'met' : 'missed',
        `${inspection.stage}, ${moment(inspection.at)}`,
      ]);
  return [
    heading('Readings against forecast and what is asked'),
    table(
      [
        ['Zone', 0.8],
        ['Reading', 2.4],
        ['Forecast', 1.8, 'right'],
        ['Seen', 1.8, 'right'],
        ['Asked', 1.8, 'right'],
        ['', 1],
        ['Taken', 3],
      ],
      [...newest.values()].toSorted((a, b) => compareLetters(a[0]!, b[0]!) || compare(a[1]!, b[1]!)),
      `No reading is recorded. The venue asks for ${percent(venue.rules.coverNeeded)} live cover in every zone; the competition asks for the rest.`,
    ),
  ];
};

/** Amounts of the work and the water of young sod; nothing for plans kept before they were reckoned. */
const worksPart = ({ plan: { plan } }: RecoveryPapers, units: UnitSystem): readonly Part[] => {
  const { works } = plan;
  if (works === undefined) return [];
  const amounts = amountLines(works, units);
  const waterings = wateringLines(works);
  if (amounts.length + waterings.length + works.cautions.length === 0) return [];
  const water = waterings.map(
    ({ zone, count, volume, first, last }) =>
      [
        zone,
        `${counted(count, 'watering')} ${count === 1 ? `on ${moment(first)}` : `from ${moment(first)} to ${moment(last)}`}, ${show(volume, 'water', units)} in all`,
      ] as const,
  );
  return [
    heading('Quantities'),
    table(
      [
        ['Zone', 0.7],
        ['What the work comes to', 9],
      ],
      [...amounts.map(({ zone, words }) => [zone, words]), ...water.map((row) => [...row])],
      '',
    ),
    ...works.cautions.map(sentence),
    small(
      'Sand fills the holes by tine, spacing and depth, and lies on top of that; seed to buy is pure live seed over purity and germination; nitrogen stays within the cap of one application. Water of young sod is the demand of the middle weather less its rain.',
    ),
  ];
};

const sodPart = (papers: RecoveryPapers, units: UnitSystem): readonly Part[] => {
  const { orders } = papers.plan.plan;
  if (orders.length === 0) return [heading('Sod'), sentence('No sod is ordered.')];
  return [
    heading('Sod and trucks'),
    ...orders.flatMap((order): readonly Part[] => [
      sentence(
        `${farmName(papers, order.farm)}, ${order.cut} cut for ${zonesInWords(order.zones)}: ${show(order.area, 'area', units)} to lie, ${show(order.ordered, 'area', units)} with waste, in whole rolls as below. Release by ${moment(order.releaseBy)}: ${order.terms
          .filter((term) => term.hours > 0)
          .map((term) => `${term.name.toLowerCase()} ${hourWords(term.hours)}`)
          .join(', ')} before the first roll${order.terms[0] === undefined ? '' : ` on ${moment(order.terms[0].at)}`}.`,
      ),
      table(
        [
          ['Truck', 0.8, 'right'],
          ['Cut', 2],
          ['At the gate', 2],
          ['Down', 1],
          ['Rolls', 0.8, 'right'],
          ['Area', 1.4, 'right'],
          ['Weight', 1.5, 'right'],
          ['In the roll', 1.1, 'right'],
          ['Zones', 1.4],
        ],
        order.trucks.length === 0
          ? []
          : [
              ...order.trucks.map((truck) => [
                String(truck.number),
                moment(truck.cut),
                moment(truck.arrive),
                clockOf(truck.down),
                figure(truck.rolls, 0),
                show(truck.area, 'area', units),
                show(truck.weight, 'mass', units),
                rolledUp(papers, order, truck),
                truck.zones.join(' '),
              ]),
              ['Sum', '', '', '', ...loadedInAll(order, units), '', ''],
            ],
        'No truck is planned.',
        { sum: true },
      ),
    ]),
  ];
};

/** Estimate in three cases beside what was entered, kind by kind, and who bears it. */
const costPart = ({ estimate, money }: RecoveryPapers, units: UnitSystem): readonly Part[] => {
  const { account, currency, terms } = money;
  const exact = (value: number): string => exactMoney(value, currency).slice(4);
  const kinds = entryKinds.filter(
    (kind) => estimate.lines.some((line) => line.kind === kind) || account.byKind.some((one) => one.kind === kind),
  );
  const row = (kind: EntryKind): readonly string[] => {
    const lines = estimate.lines.filter((line) => line.kind === kind);
    const entered = account.byKind.find((one) => one.kind === kind);
    const unpriced = lines.some((line) => line.sum === null);
    return [
      costWords[kind],
      quantityOf(lines, units),
      ...cases.map((one) =>
        lines.length === 0 ? '–' : unpriced ? 'no price' : exact(lines.reduce((sum, line) => sum + line.sum![one], 0)),
      ),
      entered === undefined ? '–' : exact(entered.total),
      entered === undefined ? '–' : exact(entered.charged),
      entered === undefined ? '–' : exact(entered.own),
    ];
  };
  return [
    heading(`Cost against estimate, ${currency}`),
    table(
      [
        ['', 2],
        ['Likely quantity', 1.9, 'right'],
        ['Low', 1.7, 'right'],
        ['Likely', 1.7, 'right'],
        ['High', 1.7, 'right'],
        ['Entered', 1.7, 'right'],
        ['Chargeable', 1.7, 'right'],
        ['Venue', 1.7, 'right'],
      ],
      [
        ...kinds.map(row),
        [
          'Sum',
          '',
          ...cases.map((one) => exact(estimate.total[one])),
          exact(account.total),
          exact(account.byKind.reduce((sum, one) => sum + one.charged, 0)),
          exact(account.byKind.reduce((sum, one) => sum + one.own, 0)),
        ],
      ],
      '',
      { sum: true },
    ),
    sentence(
      terms === null
        ? 'No terms are entered: the venue bears everything.'
        : `${terms.payer} bears low / likely / high ${moneyRange(estimate.payer, currency)} of the estimate. ${claimSum(money)}`,
    ),
    small(basisWords(estimate, units)),
  ];
};

/** From what is chargeable to what is claimed, each step with its sum, and who pays it in the end. */
const claimSum = ({ account, currency }: RecoveryPapers['money']): string => {
  const exact = (value: number): string => exactMoney(value, currency);
  const chargeable = account.byKind.reduce((sum, one) => sum + one.charged, 0);
  const less = [
    [account.unproven, 'has no proof yet'],
    [account.tooLate, 'came after the last day'],
    [account.excess, 'the venue bears first'],
    [account.aboveCap, 'is above the cap'],
  ] as const;
  const steps = less.flatMap(([sum, why]) => (sum > 0 ? [`${exact(sum)} ${why}`] : []));
  const claim =
    steps.length === 0
      ? `All of the ${exact(chargeable)} that is chargeable is claimed`
      : `Of ${exact(chargeable)} chargeable ${steps.join(', ')}: ${exact(account.claim)} is claimed`;
  return `${claim}${account.claimBy === null ? '' : `, by ${dayWords(account.claimBy)} at the latest`}. From the deposit ${exact(account.depositKept)}, balance due ${exact(account.balanceDue)}; the venue bears ${exact(account.venueBears)}.`;
};

const quantityOf = (lines: RecoveryPapers['estimate']['lines'], units: UnitSystem): string => {
  const unit = lines[0]?.unit;
  if (unit === undefined) return '–';
  return costAmount(
    lines.reduce((sum, line) => sum + line.quantity.likely, 0),
    unit,
    units,
  );
};

/** Pictures that can be printed, newest walk first. */
export const picturesOf = ({ evidence }: RecoveryPapers, most: number): readonly Picture[] =>
  evidence.inspections
    .toReversed()
    .flatMap((one) => one.pictures)
    .flatMap(({ bytes, caption }) => (bytes === null ? [] : [{ bytes, caption }]))
    .slice(0, most);

const incidentsPart = (papers: RecoveryPapers, units: UnitSystem): readonly Part[] => {
  const { inspections } = papers.evidence;
  const defects = [
    // Runs kept before incidents could be entered have none.
    ...(papers.booking.incidents ?? []).map((one) => ({
      at: one.at,
      zone: one.zone,
      words: `${one.kind.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)}${
        one.treatedAfter === null ? '' : `, treated after ${Math.round(one.treatedAfter)} min`
      }${one.until === null ? '' : `, gone ${moment(one.until)}`}`,
      size: show(one.area, 'area', units),
      cause: 'entered with the booking',
      clause: '',
    })),
    ...inspections.flatMap((one) => one.defects.map((defect) => ({ at: one.at, ...defect }))),
  ].toSorted((a, b) => compare(a.at, b.at));
  const pictures = picturesOf(papers, 3);
  return [
    heading('Incidents'),
    table(
      [
        ['Seen', 2],
        ['Zone', 0.8],
        ['What', 4],
        ['Size', 2],
        ['Cause', 2],
        ['Clause', 1],
      ],
      defects.map((one) => [moment(one.at), one.zone, one.words, one.size, one.cause, orDash(one.clause)]),
      'No defect and no spill is recorded.',
    ),
    ...(pictures.length > 0 ? [{ part: 'pictures' as const, pictures }] : []),
  ];
};

const risksPart = (papers: RecoveryPapers, units: UnitSystem): readonly Part[] => {
  const { forecast, plan, others, venue } = papers;
  const homeDate = forecast.result.homeDate.start;
  const next = others
    .flatMap((other) => {
      const booked = bookedSpan({ booking: other });
      return booked === null || booked.on < homeDate || booked.on > addHours(homeDate, 24 * 60, venue.place.timeZone)
        ? []
        : [`${other.name} lies on the field from ${moment(booked.on)}: new turf is still weak then.`];
    })
    .slice(0, 3);
  const tight = plan.plan.zones.filter((zone) => zone.finish !== null && zone.slack < 24).map((zone) => zone.zone);
  return [
    heading('Next risks'),
    list([
      ...(tight.length > 0 ? [`Less than a day in hand in ${zonesInWords(tight)}.`] : []),
      ...forecast.result.warnings.map(
        (warning) => `Zone ${warning.zone}, ${warningWords[warning.kind]}. ${warningText(warning, units)}.`,
      ),
      ...next,
      ...(plan.plan.zones.some((zone) => zone.dailyHours > 0)
        ? ['New sod is watered every day until the home date; seams open where it is not.']
        : []),
      ...plan.plan.cautions,
      ...Object.entries(cautions)
        .filter(([key]) => key !== 'rink' || papers.booking.kind === 'rink')
        .map(([, words]) => words),
    ]),
  ];
};

const lessonsPart = ({ evidence }: RecoveryPapers): readonly Part[] => [
  heading('Lessons and changed settings'),
  ...(evidence.lessons.length + evidence.changedSettings.length > 0
    ? [list([...evidence.lessons, ...evidence.changedSettings])]
    : [
        {
          part: 'blanks' as const,
          labels: [
            'Nothing is recorded yet. To be written after the true-up: what was different, and what is changed for the next time',
          ],
        },
      ]),
];

/** The works that carry most of a recovery report. */
const leanedOn = [
  'richardson-wright-1984',
  'erbs-1982',
  'faust-logan-2018',
  'sod-stack-2001',
  'dickson-2018',
  'hill-pickering-2009',
  'larsen-bibby-2005',
  'nps-turf-guide',
  'gelernter-stowell-notes',
] as const;

const sourcesPart = ({ forecast, venue }: RecoveryPapers): readonly Part[] => [
  heading('What was taken for granted, and sources'),
  smallList([
    ...[...forecast.result.assumptions, venue.about].filter((line) => line !== ''),
    leanedOn.flatMap((id) => (id in sources ? [citation(sources[id as keyof typeof sources])] : [])).join(' '),
    `Engine ${forecast.engineVersion}, parameters ${forecast.parameterVersion}, seed ${forecast.seed}, input ${forecast.inputHash.slice(0, 16)}. Every number stands in the catalogue with its unit, range, source and standing.`,
  ]),
];
