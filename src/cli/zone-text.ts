import type { Forecast, ZoneForecast } from '#shared/vocabulary/forecast.ts';
import { show, type UnitSystem } from '#shared/units/quantity.ts';
import { causeWords, verdictWords } from '#shared/wording/words.ts';
import { textTable } from '#cli/text-table.ts';

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** The causes that took most of the cover, with their shares of the loss. */
const causeOf = ({ causes }: ZoneForecast): string => {
  const all = Object.entries(causes).toSorted(([, one], [, other]) => other - one);
  const total = all.reduce((sum, [, loss]) => sum + loss, 0);
  if (total < 0.01) return '–';
  return all
    .filter(([, loss]) => loss / total >= 0.1)
    .map(([cause, loss]) => `${causeWords[cause as keyof typeof causeWords]} ${percent(loss / total)}`)
    .join(', ');
};

/** The zones of a forecast as a table: cover now, after, on the home date with its range, chance, cause. */
export const zoneLines = (forecast: Forecast, units: UnitSystem): readonly string[] =>
  textTable(
    ['zone', 'name', 'turf', 'covered', 'now', 'after', 'home date', '8 of 10', 'ready', 'cause', 'left alone'],
    forecast.zones.map((zone) => [
      zone.letter,
      zone.name,
      show(zone.area, 'area', units),
      zone.hoursCovered > 0 ? `${zone.hoursCovered} h` : '–',
      percent(zone.coverBefore.p50),
      percent(zone.coverAfter.p50),
      percent(zone.coverHome.p50),
      forecast.members === 1 ? '–' : `${Math.round(100 * zone.coverHome.p10)}–${Math.round(100 * zone.coverHome.p90)}`,
      percent(zone.chanceReady),
      causeOf(zone),
      verdictWords[zone.verdict],
    ]),
  );
