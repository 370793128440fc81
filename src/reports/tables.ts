import { stringify } from 'csv-stringify/sync';
import type { RecoveryPapers } from '#reports/recovery-papers.ts';
import { compare, jobsInOrder } from '#reports/wording.ts';
import { causes } from '#shared/vocabulary/forecast.ts';

type Cell = string | number | null;

/**
 * A table as CSV (RFC 4180) with a byte-order mark, so that a spreadsheet reads it as UTF-8. A text that a spreadsheet would take for a
 * formula is given a leading apostrophe. Units stand in the head; numbers are SI.
 */
export const csv = (head: readonly string[], rows: readonly (readonly Cell[])[]): string =>
  `\uFEFF${stringify([[...head], ...rows.map((row) => row.map(plain))], { record_delimiter: 'windows' })}`;

/** Signs that begin a formula in a spreadsheet, also in their wide forms, also behind blanks and control characters. */
const formula = /^[\s\p{Cc}\uFEFF]*[=+\-@|%\uFF1D\uFF0B\uFF0D\uFF20]|^[\t\r\n]/u;

const plain = (cell: Cell): Cell => (typeof cell === 'string' && formula.test(cell) ? `'${cell}` : cell);

/** One row a zone: what the forecast says. */
export const zoneTable = ({ forecast }: RecoveryPapers): string =>
  csv(
    [
      'zone',
      'name',
      'origin',
      'turf_m2',
      'covered_h',
      'dark_h',
      'cover_before',
      'cover_after',
      'cover_home_p10',
      'cover_home_p50',
      'cover_home_p90',
      'chance_ready',
      'verdict',
      ...causes.map((cause) => `loss_${cause}_ln`),
    ],
    forecast.result.zones.map((zone) => [
      zone.letter,
      zone.name,
      zone.origin,
      zone.area,
      zone.hoursCovered,
      zone.hoursDark,
      zone.coverBefore.p50,
      zone.coverAfter.p50,
      zone.coverHome.p10,
      zone.coverHome.p50,
      zone.coverHome.p90,
      zone.chanceReady,
      zone.verdict,
      ...causes.map((cause) => zone.causes[cause] ?? 0),
    ]),
  );

/** One row a job and one a watering of young sod in a zone, in the order of their starts. A watering has an hour and no end of its own. */
export const jobTable = (papers: RecoveryPapers): string =>
  csv(
    ['zone', 'job', 'start_venue_time', 'end_venue_time', 'people', 'machine', 'done', 'water_mm', 'water_m3'],
    [
      ...jobsInOrder(papers).map((job): readonly [Cell, Cell, string, ...Cell[]] => [
        job.zone ?? 'field',
        job.job,
        job.start,
        job.end,
        job.crew,
        job.machine ?? '',
        job.done ? 'yes' : 'no',
        null,
        null,
      ]),
      ...(papers.plan.plan.works?.waterings ?? []).map(
        ({ zone, at, depth, volume }) =>
          [zone, 'water-new-sod', at, null, null, null, null, hundredth(depth), hundredth(volume)] as const,
      ),
    ].toSorted((one, other) => compare(one[2], other[2])),
  );

/** One row a truck of every sod order. */
export const sodTable = ({ plan }: RecoveryPapers): string =>
  csv(
    [
      'farm',
      'cut',
      'release_by_venue_time',
      'truck',
      'cut_venue_time',
      'leave',
      'arrive',
      'down',
      'rolls',
      'area_m2',
      'weight_kg',
      'hours_in_roll',
      'zones',
    ],
    plan.plan.orders.flatMap((order) =>
      order.trucks.map((truck) => [
        order.farm,
        order.cut,
        order.releaseBy,
        truck.number,
        truck.cut,
        truck.leave,
        truck.arrive,
        truck.down,
        truck.rolls,
        hundredth(truck.area),
        hundredth(truck.weight),
        hundredth(truck.hoursInRoll),
        truck.zones.join(' '),
      ]),
    ),
  );

const hundredth = (value: number): number => Math.round(value * 100) / 100;

/** One row a line of cost as entered, in the order of its number; money in the smallest unit of the currency. */
export const costTable = ({ money: { account } }: RecoveryPapers): string =>
  csv(
    [
      'line',
      'corrects',
      'date',
      'kind',
      'zone',
      'words',
      'quantity',
      'unit',
      'currency',
      'price_minor',
      'sum_minor',
      'charged_minor',
      'venue_minor',
      'clause',
      'state',
      'evidence',
    ],
    account.lines.map(({ entry, fate, charged, own }) => [
      entry.number,
      entry.corrects,
      entry.date,
      entry.kind,
      entry.zone,
      entry.words,
      entry.quantity,
      entry.unit,
      entry.currency,
      entry.price,
      entry.sum,
      charged,
      own,
      entry.clause,
      fate,
      entry.evidence,
    ]),
  );
