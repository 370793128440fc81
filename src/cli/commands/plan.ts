import type { Command } from '#cli/command.ts';
import { planLines } from '#cli/plan-text.ts';
import { unitsOf } from '#cli/units-option.ts';

export const plan: Command = {
  summary: 'Plans the recovery after a kept forecast, with its sod order, and keeps the plan',
  usage: '--forecast RUN [--now YYYY-MM-DDTHH:MM] [--instead PLAN] [--units us|si]',
  options: { forecast: { type: 'string' }, now: { type: 'string' }, instead: { type: 'string' }, units: { type: 'string' } },
  run: async (desk) => {
    const forecastId = desk.need('forecast');
    const units = unitsOf(desk);
    const text = (option: string): string | null => (typeof desk.options[option] === 'string' ? desk.options[option] : null);
    const made = await desk.work('plan/make', { forecastId, now: text('now'), locks: [], done: [], instead: text('instead') });
    if (desk.json) return desk.printJson(made);
    const venue = await desk.ask('venue/read', { id: made.venueId });
    for (const line of planLines(made, venue, units)) desk.print(line);
    desk.note(`Kept as plan ${made.id}.`);
  },
};
