import { figure, show, type UnitSystem, showMoney } from '#shared/units/quantity.ts';
import { exactMoney } from '#shared/vocabulary/money.ts';
import type { RecoveryPapers, SeasonEvent } from '#reports/recovery-papers.ts';
import { heading, sentence, small, strong, table, type Part, type Sheet } from '#reports/sheet.ts';
import { areaRange, bookedSpan, counted, countRange, dayWords, moneyRange, titleOf } from '#reports/wording.ts';

/** The year in events: cover, turf, sod and money, one line each, with running sums, and the same ground used again. */
export const seasonLedger = (papers: RecoveryPapers, units: UnitSystem): Sheet => {
  const { season, money, plan } = papers;
  const { currency } = money;
  const year = papers.forecast.result.homeDate.start.slice(0, 4);
  const add = (part: (event: SeasonEvent) => number): number => season.reduce((sum, event) => sum + part(event), 0);
  const title = titleOf(papers, 'Season ledger');
  return {
    title: {
      ...title,
      subject: `events of ${year}`,
      facts: [`plans kept up to ${plan.createdAt.slice(0, 10)}`, ...title.facts.slice(3)],
    },
    format: 'standard',
    turned: true,
    pages: null,
    parts: [
      strong(
        `${counted(season.length, 'event')} with a kept plan in ${year}: ${show(
          add((event) => event.kept.estimate.area.likely),
          'area',
          units,
        )} of turf to be replaced, ${showMoney(
          add((event) => event.kept.estimate.total.likely),
          currency,
        )} likely cost, ${showMoney(
          add((event) => event.money.account.total),
          currency,
        )} entered so far.`,
      ),
      table(
        [
          ['Event', 3],
          ['On the field', 2.5],
          ['Longest cover', 1, 'right'],
          ['Replaced low / likely / high', 2.7, 'right'],
          ['Sod so far', 1.3, 'right'],
          ['Trucks', 1.3, 'right'],
          [`Cost low / likely / high, ${currency}`, 2.9, 'right'],
          ['Entered', 1.7, 'right'],
          ['Claimed', 1.7, 'right'],
          ['Venue', 1.7, 'right'],
        ],
        season.length === 0 ? [] : [...rows(season, units), sumRow(papers, units)],
        'No plan is kept for an event of this year.',
        { sum: true },
      ),
      ...groundPart(papers, units),
      ...seenPart(papers),
      small(
        'Hours of cover and areas are the forecast’s of each event’s newest kept plan; money entered is what stands in the accounts.',
      ),
    ],
  };
};

const rows = (season: readonly SeasonEvent[], units: UnitSystem): readonly (readonly string[])[] => {
  let sod = 0;
  return season.map(({ kept, money: { account, currency } }) => {
    const { estimate, booking, forecast } = kept;
    const booked = bookedSpan(kept);
    sod += estimate.area.likely;
    return [
      booking.name,
      booked === null ? '–' : `${dayWords(booked.on.slice(0, 10))} – ${dayWords(booked.off.slice(0, 10))}`,
      `${figure(Math.max(0, ...forecast.result.zones.map((zone) => zone.hoursCovered)) / 24, 1)} d`,
      areaRange(estimate.area, units),
      show(sod, 'area', units),
      countRange(estimate.trucks),
      moneyRange(estimate.total, currency).slice(4),
      exactMoney(account.total, currency).slice(4),
      exactMoney(account.claim, currency).slice(4),
      exactMoney(account.venueBears, currency).slice(4),
    ];
  });
};

const sumRow = ({ season, money }: RecoveryPapers, units: UnitSystem): readonly string[] => {
  const add = (part: (event: SeasonEvent) => number): number => season.reduce((sum, event) => sum + part(event), 0);
  const range = (part: (event: SeasonEvent) => Readonly<Record<'low' | 'likely' | 'high', number>>) => ({
    low: add((event) => part(event).low),
    likely: add((event) => part(event).likely),
    high: add((event) => part(event).high),
  });
  const exact = (value: number): string => exactMoney(value, money.currency).slice(4);
  return [
    'Sum',
    '',
    '',
    areaRange(
      range((event) => event.kept.estimate.area),
      units,
    ),
    '',
    countRange(range((event) => event.kept.estimate.trucks)),
    moneyRange(
      range((event) => event.kept.estimate.total),
      money.currency,
    ).slice(4),
    exact(add((event) => event.money.account.total)),
    exact(add((event) => event.money.account.claim)),
    exact(add((event) => event.money.account.venueBears)),
  ];
};

/** Ground that more than one event of the year lies on: hours of cover added up cell by cell. */
export const sameGround = (
  season: readonly SeasonEvent[],
): readonly { readonly events: readonly string[]; readonly area: number; readonly hours: number }[] => {
  const cells = new Map<string, { events: string[]; hours: number; area: number }>();
  for (const { kept } of season) {
    const { cells: grid, zones } = kept.forecast.result;
    grid.x.forEach((x, cell) => {
      const zone = zones[grid.zone[cell]!];
      if (zone === undefined || zone.hoursCovered === 0) return;
      const key = `${x} ${grid.y[cell]!} ${grid.size}`;
      const before = cells.get(key) ?? { events: [], hours: 0, area: grid.area[cell]! };
      cells.set(key, { ...before, events: [...before.events, kept.booking.name], hours: before.hours + zone.hoursCovered });
    });
  }
  const groups = new Map<string, { events: readonly string[]; area: number; hours: number }>();
  for (const { events, hours, area } of cells.values()) {
    if (events.length < 2) continue;
    const key = events.join(' + ');
    const before = groups.get(key) ?? { events, area: 0, hours: 0 };
    groups.set(key, { events, area: before.area + area, hours: Math.max(before.hours, hours) });
  }
  return [...groups.values()].toSorted((a, b) => b.area - a.area);
};

const groundPart = ({ season }: RecoveryPapers, units: UnitSystem): readonly Part[] => [
  heading('The same ground again'),
  table(
    [
      ['Events', 6],
      ['Ground', 2, 'right'],
      ['Most hours of cover together', 2, 'right'],
    ],
    sameGround(season).map((group) => [
      group.events.join(' + '),
      show(group.area, 'area', units),
      `${Math.round(group.hours)} h`,
    ]),
    'No ground is covered by more than one event of the year.',
  ),
];

const seenPart = ({ evidence }: RecoveryPapers): readonly Part[] => [
  heading('Forecast against fact, and settings changed'),
  ...(evidence.lessons.length + evidence.pastCases.length + evidence.changedSettings.length === 0
    ? [sentence('No inspection of a past event is recorded yet.')]
    : [{ part: 'list' as const, items: [...evidence.lessons, ...evidence.pastCases, ...evidence.changedSettings] }]),
];
