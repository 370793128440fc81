import { planned } from '#planner/planned.ts';
import type { Planned } from '#planner/planned.ts';
import type { PlanPrices } from '#planner/plan-prices.ts';
import type { Runner } from '#planner/planning-run.ts';
import type { Clash } from '#planner/recovery-model.ts';
import { recoveryModel } from '#planner/recovery-model.ts';
import { bandSize, withinBand } from '#planner/start-band.ts';
import { windowGroups } from '#planner/window-groups.ts';
import type { ChosenZone, ZoneOption } from '#planner/zone-options.ts';
import type { Setting } from '#planner/setting.ts';
import { zoneOption } from '#planner/zone-options.ts';
import type { ProgrammeKind, RecoveryWindow } from '#shared/vocabulary/plan.ts';

/** The programme that a zone takes in a window. */
export interface ZoneProgramme {
  readonly zone: string;
  readonly window: RecoveryWindow;
  readonly programme: ProgrammeKind;
}

export interface SequenceHow {
  /** Value of the aim that is good enough. */
  readonly target?: number | undefined;
  readonly clashes?: readonly Clash[];
  /** Farm by window where it is already chosen. */
  readonly farms?: ReadonlyMap<string, number>;
  /** Share of the time left that each solve may take. */
  readonly share?: number;
  /** Only the narrowest band is tried. */
  readonly quick?: boolean;
}

/** Starts are tried within a band of the first allowed shifts, then within a wider one, then all. */
const widenings: readonly number[] = [1, 3, Infinity];

/**
 * The sequence of each group of windows with the programmes given, exact within a band of early starts that is widened where nothing
 * fits into it; null where one cannot be sequenced.
 */
export const sequenceWindows = async (
  setting: Setting,
  choices: readonly ZoneProgramme[],
  prices: PlanPrices,
  run: Runner,
  how: SequenceHow = {},
): Promise<Planned | null> => {
  const { problem } = setting;
  const zones: ChosenZone[] = [];
  let value = 0;
  const stockLeft = problem.farms.map(({ stock }) => stock);
  const before = new Map<string, ProgrammeKind>();
  for (const group of windowGroups(setting)) {
    const fixed: ZoneOption[] = [];
    for (const choice of choices) {
      if (!group.some(({ id }) => id === choice.window.id)) continue;
      const zone = problem.zones.find(({ letter }) => letter === choice.zone)!;
      const programme = problem.programmes.find(({ kind }) => kind === choice.programme)!;
      const after = before.get(choice.zone);
      const option = zoneOption(setting, zone, choice.window, programme, after === undefined ? {} : { after });
      if (!('steps' in option)) return null;
      fixed.push(option);
      before.set(choice.zone, programme.kind);
    }
    if (fixed.length === 0) continue;
    const found = await sequenceGroup(setting, fixed, prices, run, stockLeft, how);
    if (found === null) return null;
    zones.push(...found.zones);
    value += found.value;
    for (const { option, starts } of found.zones) {
      for (const { farm } of starts) if (farm !== null) stockLeft[farm]! -= option.zone.area * (1 + problem.rules.sodWaste);
    }
  }
  return { zones, value };
};

const sequenceGroup = async (
  setting: Setting,
  fixed: readonly ZoneOption[],
  prices: PlanPrices,
  run: Runner,
  stockLeft: readonly number[],
  { target, clashes = [], farms, share = 0.4, quick = false }: SequenceHow,
): Promise<Planned | null> => {
  const size = bandSize(setting, fixed);
  let last = 0;
  for (const wider of quick ? widenings.slice(0, 1) : widenings) {
    const banded = fixed.map((option) => withinBand(setting, option, size * wider, { farm: farms?.get(option.window.id) }));
    if (banded.some((option) => option === null)) return null;
    const count = banded.reduce((sum, option) => sum + option!.starts.flat().length, 0);
    // A wider band that holds nothing more has been tried.
    if (count === last) continue;
    last = count;
    const model = recoveryModel(
      setting,
      banded.map((option) => [option!]),
      prices,
      { wholeStarts: 'all', stockLeft, clashes },
    );
    const solution = await run('sequence', model, { gap: 0.002, share, ...(target === undefined ? {} : { target }) });
    if (run.cancelled()) return null;
    if (solution.values) return planned(model, model.read(solution.values));
  }
  return null;
};
