import type { RecoveryModel } from '#planner/recovery-model.ts';
import type { Schedule } from '#planner/timetable.ts';
import type { ChosenZone } from '#planner/zone-options.ts';

/** Zones with their option and the start of each step. */
export interface Planned {
  readonly zones: readonly ChosenZone[];
  /** Value of the aim. */
  readonly value: number;
}

/** Reads zones, options and starts out of a schedule. */
export const planned = (model: RecoveryModel, schedule: Schedule): Planned => {
  const zones = schedule.options.map((index): ChosenZone => {
    const option = model.options[index]!;
    return { option, starts: option.steps.map((_, step) => option.starts[step]![schedule.starts[model.tasks[index]![step]!]!]!) };
  });
  return { zones, value: valueOf(model, schedule) };
};

/** Value of the aim of a complete schedule. */
const valueOf = (model: RecoveryModel, schedule: Schedule): number => {
  const values = model.complete(schedule);
  const { cost } = model.model.build().columns;
  return cost.reduce((sum, price, column) => sum + price * values[column]!, 0);
};

/** Column values of a plan in another model of the same problem, or null where one of its starts is not in there. */
export const startFrom = (model: RecoveryModel, plan: Planned): Float64Array | null => {
  const starts: (number | null)[] = model.timetable.tasks.map(() => null);
  const options: number[] = [];
  for (const zone of plan.zones) {
    const index = model.options.findIndex(
      (option) =>
        option.zone.letter === zone.option.zone.letter &&
        option.window.id === zone.option.window.id &&
        option.programme.kind === zone.option.programme.kind,
    );
    if (index < 0) return null;
    options.push(index);
    for (const [step, chosen] of zone.starts.entries()) {
      const place = model.options[index]!.starts[step]!.findIndex(
        ({ timed, farm }) => timed.shift === chosen.timed.shift && farm === chosen.farm,
      );
      if (place < 0) return null;
      starts[model.tasks[index]![step]!] = place;
    }
  }
  return model.complete({ options, starts });
};
