import type { UnitSystem } from '#shared/units/quantity.ts';
import type { ZonePlan } from '#shared/vocabulary/plan.ts';
import { programmeWords } from '#shared/wording/words.ts';
import { chartOf } from '#reports/drawings.ts';
import type { RecoveryPapers } from '#reports/recovery-papers.ts';
import { sentence, strong, table, type Part, type Sheet } from '#reports/sheet.ts';
import { moment, percent, titleOf } from '#reports/wording.ts';

/** The whole recovery on one sheet for the wall: bars by zone, people at work, decisions. */
export const recoveryChart = (papers: RecoveryPapers, _units: UnitSystem): Sheet => {
  const { zones } = papers.plan.plan;
  // Forty zones stand on the one page of the smaller paper, below the title.
  const rowHeight = Math.max(7.4, Math.min(22, 330 / (zones.length + 1)));
  const chart = chartOf(papers, rowHeight, true);
  const slack = zones.flatMap((zone) => (zone.finish === null ? [] : [zone.slack]));
  return {
    title: titleOf(papers, 'Recovery chart'),
    format: 'standard',
    turned: true,
    pages: zones.length > 30 ? null : 1,
    parts: [
      chart === null
        ? strong('No job is planned: every zone is left to itself.')
        : strong(
            slack.length === 0
              ? 'Every zone is left to itself.'
              : `At least ${Math.floor(Math.min(...slack))} h in hand in every zone before painting and tests.`,
          ),
      ...(chart === null ? [] : [{ part: 'chart' as const, chart }]),
      ...endsPart(zones.filter((zone) => zone.finish !== null)),
      ...(zones.some((zone) => zone.finish === null)
        ? [
            sentence(
              `Left to itself: ${zones
                .filter((zone) => zone.finish === null)
                .map((zone) => `${zone.zone} (${percent(zone.chanceReady)})`)
                .join(', ')}.`,
            ),
          ]
        : []),
    ],
  };
};

/** Most zones below the chart; more stand on a page of their own, in two columns. */
const mostBelow = 16;

const endsPart = (zones: readonly ZonePlan[]): readonly Part[] => {
  if (zones.length <= mostBelow) return [endsTable(zones)];
  const half = Math.ceil(zones.length / 2);
  return [
    { part: 'page' },
    { part: 'columns', share: 0.5, left: [endsTable(zones.slice(0, half))], right: [endsTable(zones.slice(half))] },
  ];
};

const endsTable = (zones: readonly ZonePlan[]): Part =>
  table(
    [
      ['Zone', 0.7],
      ['Way back', 3],
      ['Ends', 2],
      ['Latest', 2],
      ['In hand', 1, 'right'],
      ['Chance ready', 1.2, 'right'],
    ],
    zones.map((zone) => [
      zone.zone,
      programmeWords[zone.programme],
      moment(zone.finish!),
      moment(zone.latestFinish),
      `${Math.floor(zone.slack)} h`,
      percent(zone.chanceReady),
    ]),
    'No zone needs work.',
  );
