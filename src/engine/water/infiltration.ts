/**
 * How fast rain enters a soil: a sharp wetting front moves down from the surface.
 *
 * F = K t + m ln(1 + F/m)             cumulative infiltration from a ponded start
 * f = K (1 + m/F)                     rate
 * tp = K m/(i (i − K))                time to ponding under steady rain i > K; never below
 * After ponding: F − Fp − m ln((m + F)/(m + Fp)) = K (t − tp), Fp = i tp
 * K saturated conductivity, m = ψ Δθ front suction times the rise in water content; any consistent units (cm and h in the examples).
 * @source chow-maidment-mays-1988
 */

const check = (conductivity: number, suctionRise: number): void => {
  if (!(conductivity > 0)) throw new RangeError(`conductivity: ${conductivity} must be above 0`);
  if (!(suctionRise >= 0)) throw new RangeError(`suctionRise: ${suctionRise} must be 0 or more`);
};

/** Solves F − start − m ln((m + F)/(m + start)) = travel for F by Newton steps; the left side rises with F. */
const frontAfter = (travel: number, m: number, start: number): number => {
  if (travel <= 0) return start;
  if (m === 0) return start + travel;
  let total = start + travel + Math.sqrt(2 * m * travel);
  for (let i = 0; i < 100; i++) {
    const rest = total - start - m * Math.log((m + total) / (m + start)) - travel;
    const step = (rest * (m + total)) / total;
    total -= step;
    if (Math.abs(step) <= 1e-13 * total) break;
  }
  return total;
};

/** Water taken in after `time` under a surface that ponds from the start. */
export const ponded = (conductivity: number, suctionRise: number, time: number): number => {
  check(conductivity, suctionRise);
  return frontAfter(conductivity * time, suctionRise, 0);
};

/** Rate of intake when `total` has gone in; infinite at 0. */
export const infiltrationRate = (conductivity: number, suctionRise: number, total: number): number => {
  check(conductivity, suctionRise);
  return total > 0 ? conductivity * (1 + suctionRise / total) : suctionRise === 0 ? conductivity : Infinity;
};

/** Time until water stands on the surface under a steady rain; infinite where the soil always keeps up. */
export const timeToPonding = (conductivity: number, suctionRise: number, rainRate: number): number => {
  check(conductivity, suctionRise);
  return rainRate > conductivity ? (conductivity * suctionRise) / (rainRate * (rainRate - conductivity)) : Infinity;
};

/** Water taken in from a steady rain after `time`; the rest stands or runs off. */
export const infiltratedFromSteadyRain = (conductivity: number, suctionRise: number, rainRate: number, time: number): number => {
  const start = timeToPonding(conductivity, suctionRise, rainRate);
  if (time <= start) return Math.max(0, rainRate) * time;
  return frontAfter(conductivity * (time - start), suctionRise, rainRate * start);
};
