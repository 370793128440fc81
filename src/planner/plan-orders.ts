import { throughGate } from '#planner/gate.ts';
import type { Lay } from '#planner/sod-order.ts';
import { sodOrder } from '#planner/sod-order.ts';
import type { ChosenZone } from '#planner/zone-options.ts';
import type { Setting } from '#planner/setting.ts';
import type { SodOrder } from '#shared/vocabulary/plan.ts';

/** The sod orders of chosen programmes, one per window, farm and cut, their trucks in the slots of the gate. */
export const ordersOf = (setting: Setting, chosen: readonly ChosenZone[]): readonly SodOrder[] => {
  const { problem } = setting;
  const orders = problem.windows.flatMap((window) =>
    problem.farms.flatMap((farm, index) =>
      (['thin', 'thick'] as const).flatMap((cut): readonly SodOrder[] => {
        const lays = chosen.flatMap(({ option, starts }): readonly Lay[] =>
          option.window.id !== window.id || option.programme.sod !== cut
            ? []
            : starts
                .filter((start) => start.farm === index)
                .map(({ timed }) => ({ zone: option.zone.letter, area: option.zone.area, timed })),
        );
        return lays.length === 0 ? [] : [sodOrder(setting, window.id, farm, cut, lays)];
      }),
    ),
  );
  return throughGate(setting, orders);
};
