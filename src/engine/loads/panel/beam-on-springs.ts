/**
 * A long panel as a beam on springs.
 *
 *     λ = (k_b/(4 E I))^(1/4),  k_b = k_s · width
 *     y = (P λ/2k_b) A(λx),  A = e^(−λx)(cos λx + sin λx)
 *     M = (P/4λ) C(λx),      C = e^(−λx)(cos λx − sin λx)
 *     soil pressure p = k_s y
 *
 * Any consistent units; the engine uses kN, m, kPa: k_s in kN/m³, k_b in kN/m² and EI in kN m². Loads superpose.
 * A beam counts as rigid below λL = π/4, as infinite above π.
 *
 * @source hetenyi-1946
 * @source boresi-schmidt
 */
export interface BeamOnSprings {
  /** Force per length and settlement. */
  readonly springs: number;
  /** Bending stiffness E·I. */
  readonly stiffness: number;
}

export interface BeamLoad {
  readonly at: number;
  readonly load: number;
}

export const beamLambda = (beam: BeamOnSprings): number => {
  if (!(beam.springs > 0 && beam.stiffness > 0)) throw new RangeError('beam: springs and stiffness must be above 0');
  return (beam.springs / (4 * beam.stiffness)) ** 0.25;
};

/** Settlement and moment at `x` of an infinite beam under one or more loads. */
export const infiniteBeam = (
  beam: BeamOnSprings,
  loads: readonly BeamLoad[],
  x: number,
): { readonly settlement: number; readonly moment: number } => {
  const lambda = beamLambda(beam);
  let settlement = 0;
  let moment = 0;
  for (const { at, load } of loads) {
    const distance = lambda * Math.abs(x - at);
    const fade = Math.exp(-distance);
    settlement += ((load * lambda) / (2 * beam.springs)) * fade * (Math.cos(distance) + Math.sin(distance));
    moment += (load / (4 * lambda)) * fade * (Math.cos(distance) - Math.sin(distance));
  }
  return { settlement, moment };
};

/**
 * A beam of finite `length` with free ends and the load in its middle:
 *
 *     y₀ = (P λ/2k)(2 + cos λL + cosh λL)/(sinh λL + sin λL)
 *     y_end = (2 P λ/k) cosh(λL/2) cos(λL/2)/(sinh λL + sin λL)
 *     M₀ = (P/4λ)(cosh λL − cos λL)/(sinh λL + sin λL)
 *
 * Beyond λL = 30 the infinite beam is returned (the hyperbolic functions would overflow).
 */
export const finiteBeam = (
  beam: BeamOnSprings,
  load: number,
  length: number,
): { readonly middle: number; readonly end: number; readonly moment: number } => {
  if (!(length > 0)) throw new RangeError('length: must be above 0');
  const lambda = beamLambda(beam);
  const u = lambda * length;
  const unit = (load * lambda) / (2 * beam.springs);
  if (u > 30) return { middle: unit, end: 0, moment: load / (4 * lambda) };
  const below = Math.sinh(u) + Math.sin(u);
  return {
    middle: (unit * (2 + Math.cos(u) + Math.cosh(u))) / below,
    end: (4 * unit * Math.cosh(u / 2) * Math.cos(u / 2)) / below,
    // cosh u − cos u = 2 (sinh² (u/2) + sin² (u/2)), which keeps its digits for a short beam.
    moment: ((load / (4 * lambda)) * 2 * (Math.sinh(u / 2) ** 2 + Math.sin(u / 2) ** 2)) / below,
  };
};

/** How a panel of that length behaves on those springs. */
export const beamLengthClass = (beam: BeamOnSprings, length: number): 'rigid' | 'finite' | 'infinite' => {
  const u = beamLambda(beam) * length;
  return u < Math.PI / 4 ? 'rigid' : u <= Math.PI ? 'finite' : 'infinite';
};
