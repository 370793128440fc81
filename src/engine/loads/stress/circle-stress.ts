import { gaussPoints, gaussWeights } from '#engine/loads/stress/gauss.ts';

/**
 * Vertical stress under a uniform circular load: a tyre or pad seen from below.
 *
 *     on the axis  σ/q = 1 − cos^ν θ,  tan θ = a/z
 *
 * Off the axis the point load is integrated over the circle. Along each ray from the point the integral over the distance is
 * closed, (cos^ν β₁ − cos^ν β₂)/2π, so only the angle is summed (Gauss–Legendre; error below 1e-6 for z/a ≥ 0.02).
 * q pressure (kPa), a radius (m), z depth (m), r distance from the axis (m), ν concentration factor (3 = Boussinesq).
 * At z = 0 the stress is q inside, q/2 on the rim and 0 outside.
 *
 * @source venkatramaiah-3rd
 * @source froehlich-1934
 */
export const circleAxisShare = (depthOverRadius: number, concentration = 3): number => {
  if (!(depthOverRadius >= 0)) throw new RangeError('depth: must be at least 0');
  if (depthOverRadius === 0) return 1;
  // 1 − t^ν written so that a deep point keeps its digits.
  const t2 = Math.log1p(1 / (depthOverRadius * depthOverRadius));
  return -Math.expm1((-concentration / 2) * t2);
};

const cosinePower = (distance: number, depth: number, power: number): number =>
  (depth / Math.sqrt(distance * distance + depth * depth)) ** power;

/** Parts of the angle: fewer where depth smooths the rim. */
const panelsAt = (depth: number): number => (depth >= 0.4 ? 4 : 12);

/** Share of the pressure `q` that arrives at r/a, z/a (both over the radius of the circle). */
export const circleShare = (radiusOverRadius: number, depthOverRadius: number, concentration = 3): number => {
  const s = Math.abs(radiusOverRadius);
  const z = depthOverRadius;
  if (s === 0) return circleAxisShare(z, concentration);
  if (!(z >= 0)) throw new RangeError('depth: must be at least 0');
  if (z === 0) return s < 1 ? 1 : s === 1 ? 0.5 : 0;
  const panels = panelsAt(z);
  let sum = 0;
  if (s <= 1) {
    // The point lies under the circle: rays all round, from 0 to the rim. The angle runs over one half by symmetry.
    for (let panel = 0; panel < panels; panel++) {
      const half = Math.PI / (2 * panels);
      const middle = (2 * panel + 1) * half;
      for (let i = 0; i < gaussPoints.length; i++) {
        const angle = middle + half * gaussPoints[i]!;
        const sine = s * Math.sin(angle);
        const rim = Math.max(0, Math.sqrt(Math.max(0, 1 - sine * sine)) - s * Math.cos(angle));
        sum += half * gaussWeights[i]! * (1 - cosinePower(rim, z, concentration));
      }
    }
    return sum / Math.PI;
  }
  // Outside: only rays that hit the circle; sin φ = sin(t)/s takes away the square root at the tangents.
  for (let panel = 0; panel < panels; panel++) {
    const half = Math.PI / (4 * panels);
    const middle = (2 * panel + 1) * half;
    for (let i = 0; i < gaussPoints.length; i++) {
      const t = middle + half * gaussPoints[i]!;
      const sine = Math.sin(t) / s;
      const cosine = Math.sqrt(1 - sine * sine);
      const slope = Math.cos(t) / (s * cosine);
      const near = s * cosine - Math.cos(t);
      const far = s * cosine + Math.cos(t);
      sum += half * gaussWeights[i]! * slope * (cosinePower(near, z, concentration) - cosinePower(far, z, concentration));
    }
  }
  return sum / Math.PI;
};

/** kPa at depth `z` m, `r` m from the axis of a circle of `radius` m that carries `pressure` kPa. */
export const circleStress = (pressure: number, radius: number, r: number, z: number, concentration = 3): number => {
  if (!(radius > 0)) throw new RangeError('radius: must be above 0');
  return pressure * circleShare(r / radius, z / radius, concentration);
};
