import { addDays, atClock } from '#shared/calendar/local-time.ts';
import type { HourClock } from '#planner/shift-calendar.ts';
import type { Job, RecoveryProblem, Shift, WeatherStop } from '#shared/vocabulary/plan.ts';

/** From hour to hour. */
export type Span = readonly [from: number, until: number];

/** What of a job decides when it can be worked at. */
export interface WorkKind {
  readonly daylight: boolean;
  readonly noisy: boolean;
  readonly stoppedBy: readonly WeatherStop[];
  /** People it takes at once. */
  readonly crew: number;
}

/** Why a shift cannot be worked in. */
export type Blocker = 'night' | 'weather' | 'curfew' | 'event' | 'practice' | 'blackout' | 'home-date' | 're-entry' | 'crew';

export interface WorkingHours {
  /** Hours since the first shift of the start and the end of each shift. */
  readonly shifts: readonly Span[];
  /** Free spans of a shift for a kind of work in a zone (null: only what holds for the whole field). */
  free(shift: number, kind: WorkKind, zone: string | null): readonly Span[];
  /** What keeps a shift from being worked in; null where nothing does. */
  blocker(shift: number, kind: WorkKind, zone: string | null): Blocker | null;
  /** People who can be there in a shift, overtime included. */
  people(shift: number): number;
}

/** `span` without `taken`. */
export const without = (spans: readonly Span[], taken: Span): readonly Span[] =>
  spans.flatMap(([from, until]): Span[] => {
    if (taken[1] <= from || taken[0] >= until) return [[from, until]];
    const left: Span[] = [];
    if (taken[0] > from) left.push([from, taken[0]]);
    if (taken[1] < until) left.push([taken[1], until]);
    return left;
  });

export const lengthOf = (spans: readonly Span[]): number => spans.reduce((sum, [from, until]) => sum + until - from, 0);

/** Whether the weather of a shift stops work of a kind. */
export const weatherStopsIt = (shift: Shift, stops: readonly WeatherStop[], rainMask: number): boolean =>
  stops.some(
    (stop) =>
      (stop === 'rain' && shift.rainChance >= rainMask) ||
      (stop === 'wind' && shift.windy) ||
      (stop === 'frost' && shift.frozen) ||
      (stop === 'saturation' && shift.saturated) ||
      (stop === 'heat' && shift.hot),
  );

/**
 * When work can be done: each shift less events, practice and blackouts, less the curfew for noisy work, none at night for work that
 * needs daylight, none in weather that stops it, none with too few people.
 */
export const workingHours = (problem: RecoveryProblem, clock: HourClock): WorkingHours => {
  const shifts = problem.shifts.map(({ start, end }): Span => [clock.hourOf(start), clock.hourOf(end)]);
  const blocks = problem.blocks.map((block) => ({
    ...block,
    span: [clock.hourOf(block.from), clock.hourOf(block.until)] as Span,
  }));
  const all = curfewSpans(problem, clock);
  const curfews = shifts.map(([from, until]) => all.filter((curfew) => curfew[0] < until && curfew[1] > from));
  const people = (shift: number): number => {
    const { dayCrew, nightCrew, overtimeCrew } = problem.workforce;
    return (problem.shifts[shift]!.night ? nightCrew : dayCrew) + overtimeCrew;
  };
  const remembered = new Map<string, { readonly spans: readonly Span[]; readonly blocker: Blocker | null }[]>();
  const look = (shift: number, kind: WorkKind, zone: string | null) => {
    const key = `${kind.daylight}|${kind.noisy}|${kind.crew}|${kind.stoppedBy.join()}|${zone}`;
    let known = remembered.get(key);
    if (!known) remembered.set(key, (known = []));
    return (known[shift] ??= spansOf(shift, kind, zone));
  };
  const spansOf = (
    shift: number,
    kind: WorkKind,
    zone: string | null,
  ): { readonly spans: readonly Span[]; readonly blocker: Blocker | null } => {
    const { night } = problem.shifts[shift]!;
    if (kind.daylight && night) return { spans: [], blocker: 'night' };
    if (weatherStopsIt(problem.shifts[shift]!, kind.stoppedBy, problem.settings.rainMask))
      return { spans: [], blocker: 'weather' };
    if (people(shift) < kind.crew) return { spans: [], blocker: 'crew' };
    let spans: readonly Span[] = [shifts[shift]!];
    let blocker: Blocker | null = null;
    for (const block of blocks) {
      if (block.span[0] >= shifts[shift]![1] || block.span[1] <= shifts[shift]![0]) continue;
      if (block.zones !== null && (zone === null || !block.zones.includes(zone))) continue;
      const left = without(spans, block.span);
      if (lengthOf(left) < lengthOf(spans) - 1e-9) blocker = block.kind;
      spans = left;
    }
    if (kind.noisy) {
      for (const curfew of curfews[shift]!) {
        const left = without(spans, curfew);
        if (lengthOf(left) < lengthOf(spans) - 1e-9) blocker ??= 'curfew';
        spans = left;
      }
    }
    return { spans, blocker: lengthOf(spans) > 0 ? null : blocker };
  };
  return {
    shifts,
    people,
    free: (shift, kind, zone) => look(shift, kind, zone).spans,
    blocker: (shift, kind, zone) => look(shift, kind, zone).blocker,
  };
};

/** The curfew of every day of the calendar; one that crosses midnight ends on the next day. */
const curfewSpans = (problem: RecoveryProblem, clock: HourClock): readonly Span[] => {
  const curfew = problem.workforce.curfew;
  if (!curfew || curfew.from === curfew.until) return [];
  const days = [...new Set(problem.shifts.map(({ start }) => start.slice(0, 10)))];
  return [addDays(days[0]!, -1), ...days, addDays(days.at(-1)!, 1)].map((day): Span => {
    const last = curfew.from < curfew.until ? day : addDays(day, 1);
    return [clock.hourOf(atClock(day, curfew.from)), clock.hourOf(atClock(last, curfew.until))];
  });
};

/** What of a job decides when it can be worked at. */
export const workKindOf = ({ daylight, noisy, stoppedBy, crew }: Job): WorkKind => ({ daylight, noisy, stoppedBy, crew });
