import { figure } from '#shared/units/quantity.ts';
import { misused, type Command, type Desk } from '#cli/command.ts';
import { onlyVenue } from '#cli/only-venue.ts';
import { textTable } from '#cli/text-table.ts';

const degrees = (desk: Desk, option: string): number | null => {
  const value = desk.options[option];
  if (value === undefined) return null;
  const number = Number(value);
  if (typeof value !== 'string' || value.trim() === '' || !Number.isFinite(number))
    throw misused(`--${option}`, `must be a temperature in °C, not "${String(value)}"`);
  return number;
};

export const climate: Command = {
  summary: 'Crown temperature hour by hour under each covering on one day',
  usage: '--date YYYY-MM-DD [--maximum °C --minimum °C] [--day-of-lying N] [--covering ID] [--venue ID]',
  options: {
    date: { type: 'string' },
    maximum: { type: 'string' },
    minimum: { type: 'string' },
    'day-of-lying': { type: 'string' },
    covering: { type: 'string' },
    venue: { type: 'string' },
  },
  run: async (desk) => {
    const covering = desk.options['covering'];
    const result = await desk.ask('climate/day', {
      venueId: await onlyVenue(desk),
      date: desk.need('date'),
      coverings: typeof covering === 'string' ? [covering] : [],
      maximum: degrees(desk, 'maximum'),
      minimum: degrees(desk, 'minimum'),
      dayOfLying: desk.whole('day-of-lying', 1, 30, 2),
    });
    if (desk.json) return desk.printJson(result);
    const sorted = result.under.toSorted((a, b) => b.maximum - a.maximum);
    const hours = Array.from({ length: 24 }, (_, hour) => hour);
    const even = hours.filter((hour) => hour % 2 === 0);
    const row = (name: string, hourly: readonly number[], mean: number, maximum: number): string[] => [
      name,
      figure(mean, 1),
      figure(maximum, 1),
      ...even.map((hour) => figure(hourly[hour]!, 0)),
    ];
    const mean = result.air.reduce((sum, value) => sum + value, 0) / 24;
    const rows = [
      row('air', result.air, mean, Math.max(...result.air)),
      ...sorted.map((one) => row(one.name, one.hourly, one.mean, one.maximum)),
    ];
    for (const line of textTable(['°C under', 'mean', 'highest', ...even.map((hour) => `${hour} h`)], rows)) desk.print(line);
  },
};
