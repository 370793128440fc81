import { erfc } from '#engine/heat/error-function.ts';

/**
 * Closed forms of a uniform half-space: how far the day and the year reach into the ground, and how a sudden change at the
 * surface travels down. They judge the numerical column.
 * @source carslaw-jaeger-1959 chapter 2
 */

/** α = k/C, m²/s, from k in W/(m K) and C in J/(m³ K). */
export const diffusivity = (conductivity: number, heatCapacity: number): number => conductivity / heatCapacity;

/** d = √(2α/ω), m: depth at which a wave of angular frequency ω (rad/s) keeps 1/e of its amplitude. */
export const dampingDepth = (diffusivityValue: number, angularFrequency: number): number =>
  Math.sqrt((2 * diffusivityValue) / angularFrequency);

/** A day and a year as angular frequencies, rad/s. */
export const dailyFrequency = (2 * Math.PI) / 86400;
export const annualFrequency = (2 * Math.PI) / (365.2425 * 86400);

export interface SurfaceWave {
  /** Mean and amplitude at the surface, in one unit (K or °C). */
  readonly mean: number;
  readonly amplitude: number;
  /** rad/s */
  readonly angularFrequency: number;
  /** m²/s */
  readonly diffusivity: number;
}

/** T(z, t) = Tm + A exp(−z/d) sin(ωt − z/d); z in m, t in s. */
export const waveTemperature = (wave: SurfaceWave, depth: number, time: number): number => {
  const reach = depth / dampingDepth(wave.diffusivity, wave.angularFrequency);
  return wave.mean + wave.amplitude * Math.exp(-reach) * Math.sin(wave.angularFrequency * time - reach);
};

/** Share of the surface amplitude left at a depth, and the lag behind the surface, s. */
export const waveAtDepth = (wave: SurfaceWave, depth: number): { readonly share: number; readonly lag: number } => {
  const reach = depth / dampingDepth(wave.diffusivity, wave.angularFrequency);
  return { share: Math.exp(-reach), lag: reach / wave.angularFrequency };
};

/**
 * Share of a step at the surface that has reached depth z after time t: erfc(z / (2√(αt))).
 * At t ≤ 0 nothing has arrived below the surface.
 */
export const stepShare = (diffusivityValue: number, depth: number, time: number): number =>
  time <= 0 ? (depth > 0 ? 0 : 1) : erfc(depth / (2 * Math.sqrt(diffusivityValue * time)));
