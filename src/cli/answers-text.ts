import type { ForecastAnswers } from '#shared/vocabulary/answers.ts';
import { show, type UnitSystem } from '#shared/units/quantity.ts';
import { textTable } from '#cli/text-table.ts';

const signed = (value: number, digits = 0): string => `${value > 0 ? '+' : ''}${value.toFixed(digits)}`;
const points = (share: number): string => `${signed(100 * share)} points`;

const readingWords = {
  cover: 'live cover',
  'soil-moisture': 'soil moisture',
  hardness: 'hardness',
  'crown-temperature': 'temperature at the crowns',
} as const;

/** What each option would change, zone by zone where it changes something. */
export const optionLines = ({ options }: ForecastAnswers, units: UnitSystem): readonly string[] =>
  textTable(
    ['option', 'all ready', 'cover of the field', 'to be replaced', 'zones it changes most'],
    options.map((option) => [
      option.name,
      points(option.change.chanceReady),
      points(option.change.coverHome),
      `${option.change.replaceArea > 0 ? '+' : ''}${show(option.change.replaceArea, 'area', units)}`,
      option.zones
        .filter((zone) => zone.applies && Math.abs(zone.change.coverHome) >= 0.01)
        .toSorted((one, other) => Math.abs(other.change.coverHome) - Math.abs(one.change.coverHome))
        .slice(0, 3)
        .map((zone) => `${zone.letter} ${signed(100 * zone.change.coverHome)}`)
        .join(', ') || '–',
    ]),
  );

/** The readings that would say most, in words. */
export const narrowingLines = ({ narrowing }: ForecastAnswers): readonly string[] =>
  narrowing
    .slice(0, 3)
    .map(
      ({ zone, reading, ofReady, ofCover }) =>
        `Read ${readingWords[reading]} in zone ${zone} when the floor is off: it tells ${Math.round(100 * ofReady)} % of ready or not, ${Math.round(100 * ofCover)} % of the spread of cover.`,
    );
