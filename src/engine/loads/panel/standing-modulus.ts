/**
 * A plastic panel creeps: a leg that stands for days meets a softer plate than a wheel that rolls over it.
 *
 *     E(t) = E · (1 + t)^(−c)
 *
 * t hours of standing load, c creep exponent of the material: for HDPE, c = 0.14 joins the short-term modulus with the long-term
 * one at 50 years (0.152 of 0.93 GPa). Wood creeps little in days, metal not at all; the material is read from the modulus
 * (below 4 GPa plastic, below 15 GPa wood, above it metal). Rolling wheels have t = 0. Hours below 0 count as 0.
 *
 * @source aashto-lrfd
 */
export interface Creep {
  readonly plastic: number;
  readonly wood: number;
  readonly metal: number;
}

/** Modulus in the unit of `modulus`, which is judged in MPa. */
export const standingModulus = (modulus: number, hours: number, creep: Creep): number => {
  const exponent = modulus < 4000 ? creep.plastic : modulus < 15000 ? creep.wood : creep.metal;
  return modulus * (1 + Math.max(0, hours)) ** -exponent;
};
