import type { ZoneForecast } from '#shared/vocabulary/forecast.ts';
import type { Command } from '#cli/command.ts';
import { textTable } from '#cli/text-table.ts';

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** The cause that took most of the cover, and its share of the loss. */
const mainCause = ({ causes }: ZoneForecast): string => {
  const [first] = Object.entries(causes).sort(([, one], [, other]) => other - one);
  const total = Object.values(causes).reduce((sum, loss) => sum + loss, 0);
  return first === undefined || total <= 1e-6 ? '–' : `${first[0]} ${percent(first[1] / total)}`;
};

const heads = ['zone', 'name', 'm²', 'covered', 'cover before', 'after', 'home date', 'ready', 'cause', 'verdict'];
const rowOf = (zone: ZoneForecast): readonly string[] => [
  zone.letter,
  zone.name,
  String(Math.round(zone.area)),
  `${Math.round(zone.hoursCovered)} h`,
  percent(zone.coverBefore.p50),
  percent(zone.coverAfter.p50),
  percent(zone.coverHome.p50),
  percent(zone.chanceReady),
  mainCause(zone),
  zone.verdict,
];

export const forecast: Command = {
  summary: 'Foresees a booking on a home date, keeps the run, and prints the zones',
  usage: '--booking ID --home-date ID [--members N] [--seed N]',
  options: {
    booking: { type: 'string' },
    'home-date': { type: 'string' },
    members: { type: 'string' },
    seed: { type: 'string' },
  },
  run: async (desk) => {
    const bookingId = desk.need('booking');
    const fixtureId = desk.need('home-date');
    const members = desk.whole('members', 1, 1000, 200);
    const seed = desk.whole('seed', 0, 2 ** 31 - 1, 1);
    const { venueId, name } = await desk.ask('booking/read', { id: bookingId });
    const run = await desk.work('forecast/run', { venueId, fixtureId, bookingId, members, seed });
    if (desk.json) return desk.printJson(run);
    const { result } = run;
    desk.print(`${name}: nothing done until ${result.homeDate.name}, ${result.homeDate.start.replace('T', ' ')}`);
    for (const line of textTable(heads, result.zones.map(rowOf))) desk.print(line);
    desk.print(
      `Chance that every zone is ready: ${percent(result.chanceAllReady)}. To be replaced: ${Math.round(result.replaceArea.p50)} m² (${Math.round(result.replaceArea.p10)} to ${Math.round(result.replaceArea.p90)}).`,
    );
    for (const warning of result.warnings) desk.print(`Note ${warning.zone}: ${warning.detail}`);
    desk.note(`Kept as run ${run.id}; ${members} member${members === 1 ? '' : 's'}, seed ${seed}.`);
  },
};
