import type { Ground } from '#engine/heat/ground.ts';
import { frozenShare } from '#engine/heat/freezing-enthalpy.ts';
import {
  anyFrost,
  beginFrost,
  foldFrost,
  foldThawed,
  openSoil,
  prepareSweep,
  settleFrost,
  soilHeat,
  soilIntake,
  unfold,
} from '#engine/heat/soil-sweep.ts';

/**
 * Ground whose surface temperature is given: the same solver as under a covering, with nothing on top. It is what the
 * published wave, step and freezing cases are run on.
 */
export interface HeldSurfaceRun {
  readonly ground: Ground;
  /** °C of each cell at the start. */
  readonly start: Float64Array;
  /** °C at the surface at the end of step n (n from 1), held through the step. */
  readonly surface: (time: number) => number;
  /** s of one step, and how many. */
  readonly step: number;
  readonly steps: number;
  /** Called after each step with the time, s, and the temperatures; read them, do not keep the array. */
  readonly after?: (time: number, temperature: Float64Array) => void;
}

export interface HeldSurfaceResult {
  readonly temperature: Float64Array;
  /** J/m² gained by the ground, and J/m² that came in through its two ends. */
  readonly stored: number;
  readonly received: number;
  /** Sum of the sizes of the flows behind `received`, J/m²: what a closure error is judged against. */
  readonly moved: number;
}

const tolerance = 1e-7;
const mostRounds = 60;

/** Runs the column. Implicit in time: any step is stable; accuracy asks for steps well below the period of the surface. */
export const runHeldSurface = (run: HeldSurfaceRun): HeldSurfaceResult => {
  const { ground, step } = run;
  const sweep = prepareSweep(ground, step, 0);
  const state = openSoil(ground.cells);
  state.temperature.set(run.start);
  const before = soilHeat(ground, state.temperature);
  let received = 0;
  let moved = 0;
  for (let n = 1; n <= run.steps; n++) {
    const above = run.surface(n * step);
    const frost = above < ground.upper || anyFrost(state.temperature, ground.upper);
    if (frost) {
      beginFrost(sweep, state);
      for (let round = 0; round < mostRounds; round++) {
        foldFrost(sweep, state, 0);
        unfold(state.q, state, above);
        if (settleFrost(sweep, state) < tolerance) break;
      }
    } else {
      foldThawed(sweep, state, 0);
      unfold(sweep.q, state, above);
    }
    const link = frost ? state.link : sweep.link;
    const top = link[0]! * (above - state.solved[0]!);
    const rest = soilIntake(sweep, state, link[ground.cells]!, 0);
    received += (top + rest) * step;
    moved += (Math.abs(top) + Math.abs(rest)) * step;
    state.temperature.set(frost ? state.guess : state.solved);
    run.after?.(n * step, state.temperature);
  }
  return { temperature: state.temperature, stored: soilHeat(ground, state.temperature) - before, received, moved };
};

/** Temperature at a depth, m, between the middles of cells, with the surface at its own temperature; °C. */
export const temperatureAt = (ground: Ground, temperature: Float64Array, surface: number, depth: number): number => {
  let upperDepth = 0;
  let upper = surface;
  for (let i = 0; i < ground.cells; i++) {
    const middle = ground.depth[i]!;
    if (depth <= middle) return upper + ((temperature[i]! - upper) * (depth - upperDepth)) / (middle - upperDepth);
    upperDepth = middle;
    upper = temperature[i]!;
  }
  return upper;
};

/** Depth of frozen ground, m: the thickness of each cell times the share of its water that is ice. */
export const frozenDepth = (ground: Ground, temperature: Float64Array): number => {
  let sum = 0;
  for (let i = 0; i < ground.cells; i++)
    sum += ground.thickness[i]! * frozenShare(temperature[i]!, ground.upper, ground.interval);
  return sum;
};
