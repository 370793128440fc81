import { figure, show, showMoney } from '#shared/units/quantity.ts';
import type { Command } from '#cli/command.ts';
import { textTable } from '#cli/text-table.ts';
import { unitsOf } from '#cli/units-option.ts';

const percent = (share: number): string => `${Math.round(share * 100)} %`;

export const sod: Command = {
  summary: 'Lays the farms of a kept plan side by side, and weighs a reserve of sod against what may be needed',
  usage: '--plan PLAN [--units us|si]',
  options: { plan: { type: 'string' }, units: { type: 'string' } },
  run: async (desk) => {
    const id = desk.need('plan');
    const units = unitsOf(desk);
    const decision = await desk.work('plan/sod', { id });
    if (desk.json) return desk.printJson(decision);
    const { venueId } = await desk.ask('plan/read', { id });
    const venue = await desk.ask('venue/read', { id: venueId });
    const money = (amount: number): string => showMoney(amount, venue.rules.currency);
    const area = (value: number): string => show(value, 'area', units);
    const nameOf = (farm: string | null): string => venue.farms.find((one) => one.id === farm)?.name ?? farm ?? 'without sod';
    const { p10, p50, p90 } = decision.need;
    desk.print(`Sod that may be needed, with waste: ${area(p50)}; 8 of 10 between ${area(p10)} and ${area(p90)}`);
    desk.print('');
    for (const line of textTable(
      ['one farm alone', 'cost', 'sod', 'trucks', 'release by', 'in hand', 'least ready'],
      decision.farms.map(({ farm, plan, reason }) =>
        plan === null
          ? [nameOf(farm), `no plan: ${reason ?? ''}`]
          : [
              nameOf(farm),
              money(plan.total),
              area(plan.ordered),
              `${plan.trucks}`,
              plan.releaseBy?.replace('T', ' ') ?? '–',
              plan.slack === null ? '–' : `${figure(plan.slack, 0)} h`,
              percent(plan.leastChance),
            ],
      ),
    ))
      desk.print(line);
    desk.print('');
    for (const line of textTable(
      ['order and reserve', 'cut', 'order', 'hold', 'expected cost', 'chance short', 'prices missing'],
      decision.reserves.map(({ farm, cut, best, missing }) => [
        nameOf(farm),
        cut,
        ...(best
          ? [area(best.ordered), area(best.reserved), money(best.expectedCost), percent(best.chanceShort)]
          : ['–', '–', '–', '–']),
        missing.join(', ') || 'none',
      ]),
    ))
      desk.print(line);
  },
};
