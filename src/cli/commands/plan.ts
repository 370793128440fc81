import type { Command } from '#cli/command.ts';
import { misused } from '#cli/command.ts';
import { planLines } from '#cli/plan-text.ts';
import { unitsOf } from '#cli/units-option.ts';
import { Mend, RecoveryProblem } from '#shared/vocabulary/plan.ts';

const Mends = Mend.array();
const Released = RecoveryProblem.unwrap().shape.released;

export const plan: Command = {
  summary: 'Plans the recovery after a kept forecast, with its sod order, and keeps the plan',
  usage:
    '--forecast RUN [--further RUN,RUN…] [--now YYYY-MM-DDTHH:MM] [--instead PLAN] [--released JSON] [--mends JSON] [--units us|si]',
  options: {
    forecast: { type: 'string' },
    further: { type: 'string' },
    now: { type: 'string' },
    instead: { type: 'string' },
    released: { type: 'string' },
    mends: { type: 'string' },
    units: { type: 'string' },
  },
  run: async (desk) => {
    const forecastId = desk.need('forecast');
    const units = unitsOf(desk);
    const text = (option: string): string | null => (typeof desk.options[option] === 'string' ? desk.options[option] : null);
    const list = <Item>(option: string, shape: { safeParse(value: unknown): { data?: Item } }): Item | undefined => {
      const written = text(option);
      if (written === null) return undefined;
      const read = shape.safeParse(parsed(written));
      if (read.data === undefined) throw misused(`--${option}`, 'must be a list in JSON, as --json prints it');
      return read.data;
    };
    const made = await desk.work('plan/make', {
      forecastId,
      further: text('further')?.split(',') ?? [],
      now: text('now'),
      locks: [],
      done: [],
      released: list('released', Released),
      mends: list('mends', Mends),
      instead: text('instead'),
    });
    if (desk.json) return desk.printJson(made);
    const venue = await desk.ask('venue/read', { id: made.venueId });
    for (const line of planLines(made, venue, units)) desk.print(line);
    desk.note(`Kept as plan ${made.id}.`);
  },
};

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return null;
  }
};
