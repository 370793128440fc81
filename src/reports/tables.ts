import { stringify } from 'csv-stringify/sync';
import type { RecoveryPapers } from '#reports/recovery-report.ts';
import { causes } from '#shared/vocabulary/forecast.ts';

type Cell = string | number | null;

/**
 * A table as CSV (RFC 4180) with a byte-order mark, so that a spreadsheet reads it as UTF-8. A text that a spreadsheet would take for a
 * formula is given a leading apostrophe. Units stand in the head; numbers are SI.
 */
const csv = (head: readonly string[], rows: readonly (readonly Cell[])[]): string =>
  `\uFEFF${stringify([[...head], ...rows.map((row) => row.map(plain))], { record_delimiter: 'windows' })}`;

const plain = (cell: Cell): Cell => (typeof cell === 'string' && /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell);

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

/** One row a job, in the order of their starts. */
export const jobTable = ({ plan }: RecoveryPapers): string =>
  csv(
    ['zone', 'job', 'start_venue_time', 'end_venue_time', 'people', 'machine'],
    [...plan.plan.zones.flatMap((zone) => zone.jobs), ...plan.plan.fieldJobs]
      .toSorted((a, b) => (a.start < b.start ? -1 : 1))
      .map((job) => [job.zone ?? 'field', job.job, job.start, job.end, job.crew, job.machine ?? '']),
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
        truck.area,
        truck.weight,
        truck.hoursInRoll,
        truck.zones.join(' '),
      ]),
    ),
  );
