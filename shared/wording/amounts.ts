import { figure, show, type UnitSystem } from '#shared/units/quantity.ts';
import type { PlanWorks, WorkQuantity } from '#shared/vocabulary/plan.ts';
import { amountWords } from '#shared/wording/words.ts';

/** An amount with its unit, as a paper or a terminal shows it. */
export const amountText = ({ value, unit }: Pick<WorkQuantity, 'value' | 'unit'>, units: UnitSystem): string => {
  switch (unit) {
    case '1':
      return `${figure(100 * value, 1)} %`;
    case 'holes':
      return figure(value, 0);
    case 't':
      return show(1000 * value, 'mass', units);
    case 'kg':
      return show(value, 'mass', units, value < 10 ? 1 : 0);
  }
};

const inPlural: Readonly<Record<string, string>> = {
  truck: 'trucks',
  visit: 'visits',
  day: 'days',
  job: 'jobs',
  lot: 'lots',
  roll: 'rolls',
};

/** A quantity with its unit as it was entered, the unit in the plural where it is a word. */
export const unitAmount = (quantity: string, unit: string): string => {
  const one = Object.keys(inPlural).find((word) => unit === word || unit === inPlural[word]);
  return `${quantity} ${one === undefined ? unit : quantity === '1' ? one : inPlural[one]!}`;
};

/** Depth and volume of one watering in the reader's units; an inch of it is told in hundredths. */
export const wateringAmount = (
  { depth, volume }: { readonly depth: number; readonly volume: number },
  units: UnitSystem,
): string => `${show(depth, 'rain', units, units === 'si' ? 1 : 2)}, ${show(volume, 'water', units)}`;

/** The quantity of a line of cost in the reader's units; what is counted is whole. */
export const costAmount = (quantity: number, unit: string, units: UnitSystem): string => {
  switch (unit) {
    case 'm²':
      return show(quantity, 'area', units);
    case 'm³':
      return show(quantity, 'volume', units);
    case 'kg':
      return show(quantity, 'mass', units);
    case 't':
      return show(1000 * quantity, 'mass', units);
    default:
      return unitAmount(figure(quantity, unit === 'h' ? 1 : 0), unit);
  }
};

/** Amounts by zone and window: one line each, what is done in it behind the other. */
export const amountLines = (
  works: PlanWorks,
  units: UnitSystem,
): readonly { readonly zone: string; readonly window: string; readonly words: string }[] => {
  const lines = new Map<string, { readonly zone: string; readonly window: string; readonly words: string[] }>();
  for (const quantity of works.quantities) {
    const key = `${quantity.zone}|${quantity.window}`;
    const line = lines.get(key) ?? { zone: quantity.zone, window: quantity.window, words: [] };
    line.words.push(`${amountWords[quantity.what]} ${amountText(quantity, units)}`);
    lines.set(key, line);
  }
  return [...lines.values()].map(({ zone, window, words }) => ({ zone, window, words: words.join(', ') }));
};

/** The waterings of young sod by zone and window: how many, how much, the first and the last. */
export const wateringLines = (
  works: PlanWorks,
): readonly {
  readonly zone: string;
  readonly window: string;
  readonly count: number;
  readonly volume: number;
  readonly first: string;
  readonly last: string;
}[] => {
  const keys = [...new Set(works.waterings.map(({ zone, window }) => `${zone}|${window}`))];
  return keys.map((key) => {
    const mine = works.waterings.filter(({ zone, window }) => `${zone}|${window}` === key);
    return {
      zone: mine[0]!.zone,
      window: mine[0]!.window,
      count: mine.length,
      volume: mine.reduce((sum, { volume }) => sum + volume, 0),
      first: mine[0]!.at,
      last: mine.at(-1)!.at,
    };
  });
};
