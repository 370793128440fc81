import { clockOf, dateOf } from '#shared/calendar/local-time.ts';
import type { PlanRun } from '#shared/contract/contract.ts';
import { sources } from '#shared/sources/sources.ts';
import type { Source } from '#shared/sources/source.ts';
import { figure, show, showMoney, type UnitSystem } from '#shared/units/quantity.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Cause, ForecastRun, ZoneForecast } from '#shared/vocabulary/forecast.ts';
import type { LocalTime } from '#shared/vocabulary/primitives.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { causeWords, cautions, jobWords, programmeWords, verdictWords, warningWords } from '#shared/wording/words.ts';
import { Paper, type PaperSize, type TitleBlock, type Typeface } from '#reports/paper.ts';
import { drawPlanChart } from '#reports/plan-chart.ts';
import { drawCoverLegend, drawZoneMap } from '#reports/zone-map.ts';

/** Everything the papers of one plan are written from: frozen things only, so that the same plan gives the same bytes. */
export interface RecoveryPapers {
  readonly venue: Venue;
  readonly booking: Booking;
  readonly forecast: ForecastRun;
  readonly plan: PlanRun;
}

export interface PrintWishes {
  readonly paper: PaperSize;
  readonly units: UnitSystem;
  readonly typeface: Typeface;
}

/** "Sat 31 Jul 15:00" */
export const moment = (time: LocalTime): string => {
  const date = new Date(`${dateOf(time)}T00:00:00Z`);
  const day = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'][date.getUTCDay()]!;
  const month = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'][date.getUTCMonth()]!;
  return `${day} ${date.getUTCDate()} ${month} ${clockOf(time)}`;
};

const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** "want of light 95 %, wheels and legs 5 %": what took the cover, largest first; a dash where nothing did. */
export const causesInWords = (causes: ZoneForecast['causes'], most = 2): string => {
  const all = (Object.entries(causes) as [Cause, number][]).toSorted((a, b) => b[1] - a[1]);
  const total = all.reduce((sum, [, loss]) => sum + loss, 0);
  if (total < 0.01) return '–';
  return all
    .filter(([, loss]) => loss / total >= 0.05)
    .slice(0, most)
    .map(([cause, loss]) => `${causeWords[cause]} ${percent(loss / total)}`)
    .join(', ');
};

/** The sentences a manager reads first. */
export const headlineOf = ({ venue, forecast, plan: run }: RecoveryPapers, units: UnitSystem): readonly string[] => {
  const { plan } = run;
  const weakest = plan.zones.reduce<(typeof plan.zones)[number] | null>(
    (worst, zone) => (worst === null || zone.chanceReady < worst.chanceReady ? zone : worst),
    null,
  );
  const laid = plan.orders.reduce((sum, order) => sum + order.area, 0);
  const trucks = plan.orders.reduce((sum, order) => sum + order.trucks.length, 0);
  const release = plan.orders.map((order) => order.releaseBy).toSorted()[0];
  return [
    weakest === null
      ? `Every zone is ready in the forecast on ${moment(forecast.result.homeDate.start)} without work.`
      : `Ready in the forecast on ${moment(forecast.result.homeDate.start)}: at least ${percent(weakest.chanceReady)} chance in every zone (weakest ${weakest.zone}).`,
    laid > 0
      ? `${show(laid, 'area', units)} of sod in ${trucks} truckloads; release it by ${moment(release!)}.`
      : 'No sod is needed.',
    `Cost ${showMoney(plan.cost.total, venue.rules.currency)}${plan.cost.unpriced.length > 0 ? `, without ${plan.cost.unpriced.join(', ')}: no price is entered` : ''}.`,
  ];
};

export const titleOf = ({ venue, booking, forecast, plan }: RecoveryPapers, paper: string): TitleBlock => ({
  paper,
  venue: venue.name,
  subject: booking.name,
  facts: [
    `${forecast.result.homeDate.name}: ${moment(forecast.result.homeDate.start)}`,
    `forecast ${forecast.id.slice(0, 12)}, ${forecast.result.members} members`,
    `plan ${plan.id.slice(0, 13)}`,
    `written ${plan.createdAt.slice(0, 10)}`,
  ],
  footnote: cautions.surface,
  createdAt: Date.parse(plan.createdAt),
});

/** The recovery report for management: ready, when, cost; the state before and after; the plan; the sod; what to mind. */
export const recoveryReport = async (
  papers: RecoveryPapers,
  { paper: size, units, typeface }: PrintWishes,
): Promise<Uint8Array> => {
  const paper = new Paper(size, titleOf(papers, 'Recovery report'), typeface);
  const [strong, ...others] = headlineOf(papers, units);
  paper.sentence(strong!, true);
  for (const sentence of others) paper.sentence(sentence);
  drawMaps(paper, papers, units);
  zoneTable(paper, papers, units);
  paper.heading('Recovery');
  drawPlanChart(paper, papers.plan.plan, papers.venue.place.timeZone, papers.forecast.result.homeDate.start);
  programmeTable(paper, papers);
  jobTable(paper, papers);
  sodPart(paper, papers, units);
  costPart(paper, papers);
  lastPart(paper, papers);
  return paper.finish();
};

const drawMaps = (paper: Paper, { venue, forecast }: RecoveryPapers, units: UnitSystem): void => {
  const height = 250;
  paper.room(height + 30);
  const width = (paper.width - 110) / 2;
  const subject = { forecast: forecast.result, outline: venue.field.outline, bearing: venue.field.bearing };
  const y = paper.y + 14;
  paper.doc.font('bold').fontSize(9).text('When the last layer is off', paper.left, paper.y, { lineBreak: false });
  paper.doc.text('On the home date, nothing done', paper.left + width + 20, paper.y, { lineBreak: false });
  drawZoneMap(paper, { ...subject, state: 'after' }, { x: paper.left, y, width: width - 20, height }, units);
  drawZoneMap(paper, { ...subject, state: 'home' }, { x: paper.left + width + 20, y, width: width - 20, height }, units);
  drawCoverLegend(paper, paper.left + 2 * width + 32, y + 60);
  paper.y = y + height + 6;
};

const zoneTable = (paper: Paper, { forecast }: RecoveryPapers, units: UnitSystem): void => {
  paper.heading('What the event does, zone by zone');
  paper.table(
    [
      { head: 'Zone', width: 3.4 },
      { head: 'Turf', width: 1.7, align: 'right' },
      { head: 'Covered', width: 1.3, align: 'right' },
      { head: 'Before', width: 1.1, align: 'right' },
      { head: 'After', width: 1.1, align: 'right' },
      { head: 'Home date', width: 1.9, align: 'right' },
      { head: 'Chance ready', width: 1.2, align: 'right' },
      { head: 'Cause', width: 4 },
      { head: 'Left alone', width: 2 },
    ],
    forecast.result.zones.map((zone) => [
      `${zone.letter}  ${zone.name}`,
      show(zone.area, 'area', units),
      zone.hoursCovered > 0 ? `${zone.hoursCovered} h` : '–',
      percent(zone.coverBefore.p50),
      percent(zone.coverAfter.p50),
      forecast.result.members === 1
        ? percent(zone.coverHome.p50)
        : `${percent(zone.coverHome.p50)} (${Math.round(100 * zone.coverHome.p10)}–${Math.round(100 * zone.coverHome.p90)})`,
      percent(zone.chanceReady),
      causesInWords(zone.causes),
      verdictWords[zone.verdict],
    ]),
  );
  paper.sentence(
    'Cover is live green cover, the middle of the members and in brackets the range that holds eight of ten. Causes are shares of the loss.',
  );
};

const programmeTable = (paper: Paper, { plan }: RecoveryPapers): void =>
  paper.table(
    [
      { head: 'Zone', width: 1 },
      { head: 'Way back', width: 3 },
      { head: 'Last job ends', width: 2.2 },
      { head: 'Latest', width: 2.2 },
      { head: 'In hand', width: 1.2, align: 'right' },
      { head: 'Chance ready', width: 1.4, align: 'right' },
      { head: 'Every day after', width: 2, align: 'right' },
    ],
    plan.plan.zones.map((zone) => [
      zone.zone,
      programmeWords[zone.programme],
      zone.finish === null ? '–' : moment(zone.finish),
      moment(zone.latestFinish),
      zone.finish === null ? '–' : `${Math.floor(zone.slack)} h`,
      percent(zone.chanceReady),
      zone.dailyHours > 0 ? `${figure(zone.dailyHours, 1)} h water` : '–',
    ]),
  );

const jobTable = (paper: Paper, { plan }: RecoveryPapers): void => {
  paper.heading('Jobs');
  const jobs = [...plan.plan.zones.flatMap((zone) => zone.jobs), ...plan.plan.fieldJobs].toSorted((a, b) =>
    a.start < b.start ? -1 : 1,
  );
  paper.table(
    [
      { head: 'Zone', width: 1 },
      { head: 'Job', width: 3 },
      { head: 'From', width: 2.2 },
      { head: 'Until', width: 2.2 },
      { head: 'People', width: 1, align: 'right' },
      { head: 'Machine', width: 2 },
    ],
    jobs.map((job) => [
      job.zone ?? 'field',
      jobWords[job.job],
      moment(job.start),
      moment(job.end),
      job.crew > 0 ? String(job.crew) : '–',
      job.machine?.replaceAll('-', ' ') ?? '–',
    ]),
    'No job is planned.',
  );
};

/** The sod orders with every term of their release, and the trucks. */
export const sodPart = (paper: Paper, { venue, plan }: RecoveryPapers, units: UnitSystem): void => {
  paper.heading('Sod');
  if (plan.plan.orders.length === 0) return paper.sentence('No sod is ordered.');
  const { currency } = venue.rules;
  for (const order of plan.plan.orders) {
    const farm = venue.farms.find((one) => one.id === order.farm)?.name ?? order.farm;
    const { trucks } = order;
    paper.sentence(`Release to ${farm} by ${moment(order.releaseBy)}.`, true);
    paper.sentence(
      `${order.cut} cut for zones ${order.zones.join(', ')}: ${show(order.area, 'area', units)} to lie, ${show(order.ordered, 'area', units)} with waste, ${order.rolls} rolls, ${show(order.weight, 'mass', units)}, ${trucks.length} truckloads. ` +
        `Sod ${order.price === null ? 'no price' : showMoney(order.price, currency)}, freight ${order.freight === null ? 'no price' : showMoney(order.freight, currency)}, called off after release ${order.cancelFee === null ? 'no price' : showMoney(order.cancelFee, currency)}.`,
    );
    paper.table(
      [
        { head: 'Back from the first roll laid', width: 5 },
        { head: 'Hours', width: 1, align: 'right' },
        { head: 'Brings us to', width: 2 },
      ],
      order.terms.map((term) => [term.name, figure(term.hours, 1), moment(term.at)]),
    );
    paper.table(
      [
        { head: 'Truck', width: 1 },
        { head: 'Cut', width: 2 },
        { head: 'Leaves', width: 2 },
        { head: 'Arrives', width: 2 },
        { head: 'Down', width: 2 },
        { head: 'Rolls', width: 1, align: 'right' },
        { head: 'Turf', width: 1.6, align: 'right' },
        { head: 'Weight', width: 1.6, align: 'right' },
        { head: 'Rolled up', width: 1.3, align: 'right' },
      ],
      trucks.map((truck) => [
        String(truck.number),
        moment(truck.cut),
        moment(truck.leave),
        moment(truck.arrive),
        moment(truck.down),
        String(truck.rolls),
        show(truck.area, 'area', units),
        show(truck.weight, 'mass', units),
        `${figure(truck.hoursInRoll, 0)} h`,
      ]),
    );
  }
  paper.heading('Last hours to decide');
  paper.table(
    [
      { head: 'Decision', width: 4 },
      { head: 'Latest', width: 2 },
    ],
    plan.plan.decisions.map((decision) => [decision.name, moment(decision.at)]),
  );
};

const costPart = (paper: Paper, { venue, plan }: RecoveryPapers): void => {
  paper.heading('Cost');
  const { currency } = venue.rules;
  paper.table(
    [
      { head: 'Line', width: 2 },
      { head: 'Quantity', width: 2, align: 'right' },
      { head: 'Price', width: 2, align: 'right' },
      { head: 'Sum', width: 2, align: 'right' },
      { head: 'Note', width: 4 },
    ],
    [
      ...plan.plan.cost.lines.map((line) => [
        line.kind,
        `${figure(line.quantity, 1)} ${line.unit}`,
        line.price === null ? 'no price' : `${currency} ${figure(line.price / 100, 2)}`,
        line.sum === null ? 'no price' : showMoney(line.sum, currency),
        line.note,
      ]),
      [
        'Total',
        '',
        '',
        showMoney(plan.plan.cost.total, currency),
        plan.plan.cost.unpriced.length > 0 ? `without ${plan.plan.cost.unpriced.join(', ')}` : '',
      ],
    ],
  );
};

const citation = ({ authors, year, title, where }: Source): string =>
  `${authors}${year === null ? '' : ` ${year}`}. ${title}. ${where}.`;

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

const lastPart = (paper: Paper, { forecast, plan, venue }: RecoveryPapers): void => {
  paper.heading('What to mind');
  paper.list([
    ...forecast.result.warnings.map((warning) => `Zone ${warning.zone}, ${warningWords[warning.kind]}. ${warning.detail}.`),
    ...plan.plan.cautions,
    ...Object.values(cautions),
  ]);
  paper.heading('What was taken for granted');
  paper.list([...forecast.result.assumptions, venue.about].filter((line) => line !== ''));
  paper.heading('Sources');
  paper.list([
    ...leanedOn.flatMap((id) => (id in sources ? [citation(sources[id as keyof typeof sources])] : [])),
    `Engine ${forecast.engineVersion}, parameters ${forecast.parameterVersion}, seed ${forecast.seed}, input ${forecast.inputHash.slice(0, 16)}. Every number stands in the catalogue with its unit, range, source and standing.`,
  ]);
  paper.heading('Signed');
  paper.room(50);
  for (const [index, who] of ['Head of grounds', 'Operations', 'Finance'].entries()) {
    const x = paper.left + (index * paper.width) / 3;
    paper.doc
      .moveTo(x, paper.y + 26)
      .lineTo(x + paper.width / 3 - 18, paper.y + 26)
      .lineWidth(0.6)
      .strokeColor('#1b1b1a')
      .stroke();
    paper.doc
      .font('regular')
      .fontSize(8)
      .fillColor('#6b6a66')
      .text(`${who}, date`, x, paper.y + 30, { lineBreak: false });
  }
  paper.y += 46;
};
