import { describe, expect, it } from 'vitest';
import { circleAxisShare, circleShare, circleStress } from '#engine/loads/stress/circle-stress.ts';
import { pointInfluence, pointStress } from '#engine/loads/stress/point-stress.ts';
import { cornerInfluence, rectangleStress } from '#engine/loads/stress/rectangle-stress.ts';
import { stripStress } from '#engine/loads/stress/strip-stress.ts';
import { stressUnderTyre, tyreContact } from '#engine/loads/stress/tyre-contact.ts';

const close = (actual: number, expected: number, tolerance: number, what = ''): void =>
  expect(Math.abs(actual - expected), `${what} ${actual} against ${expected}`).toBeLessThanOrEqual(tolerance);

/** Integral over a horizontal plane of a stress that depends on r only, r = z tan(u). */
const throughPlane = (stress: (r: number) => number, z: number): number => {
  const steps = 20000;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const u = ((i + 0.5) / steps) * (Math.PI / 2);
    const r = z * Math.tan(u);
    sum += stress(r) * 2 * Math.PI * r * (z / Math.cos(u) ** 2) * (Math.PI / 2 / steps);
  }
  return sum;
};

describe('point load, Boussinesq 1885', () => {
  // Closed form; agrees with Das, Principles of Geotechnical Engineering, Table 10.1.
  const table: readonly (readonly [number, number])[] = [
    [0, 0.4775], [0.1, 0.4657], [0.2, 0.4329], [0.3, 0.3849], [0.4, 0.3295], [0.5, 0.2733], [0.6, 0.2214], [0.7, 0.1762],
    [0.8, 0.1386], [0.9, 0.1083], [1.0, 0.0844], [1.2, 0.0513], [1.4, 0.0317], [1.6, 0.02], [1.8, 0.0129], [2.0, 0.0085],
    [2.5, 0.0034], [3.0, 0.0015],
  ]; // prettier-ignore
  it.each(table)('influence at r/z %f is %f', (ratio, influence) => close(pointInfluence(ratio), influence, 1e-4));
  it('is 3/(2π) straight below', () => close(pointInfluence(0), 3 / (2 * Math.PI), 1e-9));
  it.each([0.1, 0.5, 2])('carries the whole load through the plane at %f m', (z) => {
    close(throughPlane((r) => pointStress(100, r, z), z) / 100, 1, 1e-6);
  });
  it.each([3, 4, 5, 6])('carries the whole load with concentration factor %i', (factor) => {
    close(
      throughPlane((r) => pointStress(1, r, 0.3, factor), 0.3),
      1,
      1e-6,
    );
  });
  it('with concentration factor 3 is Boussinesq', () => {
    for (const r of [0, 0.05, 0.2, 1]) close(pointStress(7, r, 0.4, 3), (pointInfluence(r / 0.4) * 7) / 0.16, 1e-12);
  });
  it('refuses the surface itself', () => expect(() => pointStress(1, 0, 0)).toThrow(RangeError));
});

describe('uniform circle', () => {
  const radii = [0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4];
  // Venkatramaiah, Geotechnical Engineering, Table 10.5 (after Spangler 1951). null: the printed 0.061 is a misprint.
  const printed: Readonly<Record<string, readonly (number | null)[]>> = {
    '0.5': [0.911, 0.84, 0.418, 0.06, 0.01, 0.003, 0, 0, 0],
    '1.0': [0.646, 0.56, 0.335, 0.125, 0.043, 0.016, 0.007, 0.003, 0],
    '1.5': [0.424, 0.374, 0.256, 0.137, 0.064, 0.029, 0.013, 0.007, 0.002],
    '2.0': [0.284, 0.258, 0.194, 0.127, 0.073, 0.041, 0.022, 0.012, 0.006],
    '2.5': [0.2, 0.186, 0.15, 0.109, 0.073, 0.044, 0.028, 0.017, 0.011],
    '3.0': [0.146, 0.137, 0.117, 0.091, 0.066, 0.045, 0.031, 0.022, 0.015],
    '4.0': [0.087, 0.083, 0.076, null, 0.052, 0.041, 0.031, 0.024, 0.018],
    '5.0': [0.057, 0.056, 0.052, 0.045, 0.039, 0.033, 0.027, 0.022, 0.018],
    '10.0': [0.015, 0.014, 0.014, 0.013, 0.013, 0.013, 0.012, 0.012, 0.011],
  };
  it('meets the 80 printed entries within 0.003', () => {
    let count = 0;
    for (const [depth, row] of Object.entries(printed))
      row.forEach((value, column) => {
        if (value === null) return;
        close(circleShare(radii[column]!, Number(depth)), value, 0.003, `z/a ${depth}, r/a ${radii[column]}`);
        count += 1;
      });
    expect(count).toBe(80);
  });
  // Exact integration of the point load (derived).
  const exact: readonly (readonly [number, readonly number[]])[] = [
    [0.5, [0.9106, 0.8396, 0.4175, 0.0604, 0.0105, 0.0028, 0.001]],
    [1, [0.6464, 0.5622, 0.3322, 0.1267, 0.0418, 0.0151, 0.0062]],
    [2, [0.2845, 0.2589, 0.196, 0.1265, 0.0733, 0.0406, 0.0225]],
    [3, [0.1462, 0.1384, 0.1181, 0.0919, 0.0666, 0.046, 0.0309]],
    [5, [0.0571, 0.0558, 0.0522, 0.0468, 0.0405, 0.0339, 0.0277]],
  ];
  it.each(exact)('meets exact integration at z/a %f within 0.0002', (depth, row) => {
    row.forEach((value, column) => close(circleShare(radii[column]!, depth), value, 2e-4, `r/a ${radii[column]}`));
  });
  it('the misprinted entry is 0.0649', () => close(circleShare(1.5, 4), 0.0649, 2e-4));
  // Eq. 10.39 on the axis.
  const axis: readonly (readonly [number, number])[] = [
    [0.1, 0.999], [0.2, 0.9925], [0.25, 0.9857], [0.3, 0.9763], [0.4, 0.9488], [0.5, 0.9106], [0.6, 0.8638], [0.7, 0.8114],
    [0.8, 0.7562], [0.9, 0.7006], [1, 0.6464], [1.2, 0.5466], [1.5, 0.424], [2, 0.2845], [2.5, 0.1996], [3, 0.1462],
    [4, 0.0869], [5, 0.0571], [10, 0.0148],
  ]; // prettier-ignore
  it.each(axis)('on the axis at z/a %f is %f', (depth, value) => close(circleAxisShare(depth), value, 5e-4));
  // Fröhlich 1934, Söhne 1953 (closed form).
  const concentrated: readonly (readonly [number, number, number, number])[] = [
    [0.5, 0.96, 0.9821, 0.992], [1, 0.75, 0.8232, 0.875], [1.5, 0.5207, 0.6012, 0.6682], [2, 0.36, 0.4276, 0.488],
    [3, 0.19, 0.2316, 0.271],
  ]; // prettier-ignore
  it.each(concentrated)('with concentration factors 4, 5, 6 at z/a %f', (depth, four, five, six) => {
    close(circleAxisShare(depth, 4), four, 2e-4);
    close(circleAxisShare(depth, 5), five, 2e-4);
    close(circleAxisShare(depth, 6), six, 2e-4);
  });
  it('factor 4 equals 1 − [z²/(a²+z²)]²; z = a gives 3/4 and 7/8', () => {
    for (const z of [0.2, 0.7, 1.3, 4]) close(circleAxisShare(z, 4), 1 - ((z * z) / (1 + z * z)) ** 2, 1e-12);
    close(circleAxisShare(1, 4), 0.75, 1e-12);
    close(circleAxisShare(1, 6), 0.875, 1e-12);
    for (const z of [0.2, 0.7, 1.3, 4]) close(circleAxisShare(z, 3), 1 - (z / Math.hypot(1, z)) ** 3, 1e-12);
  });
  it('a larger factor gives more stress on the axis; stress falls with depth', () => {
    let before = 1;
    for (let z = 0.1; z < 8; z += 0.1) {
      const shares = [3, 4, 5, 6].map((factor) => circleAxisShare(z, factor));
      for (let i = 1; i < 4; i++) expect(shares[i]!).toBeGreaterThan(shares[i - 1]!);
      expect(shares[1]!).toBeLessThan(before);
      before = shares[1]!;
    }
  });
  it('is continuous over the rim and at the axis', () => {
    for (const z of [0.1, 0.5, 2]) {
      close(circleShare(1 - 1e-9, z), circleShare(1 + 1e-9, z), 1e-6);
      close(circleShare(1e-9, z, 5), circleAxisShare(z, 5), 1e-6);
    }
  });
  it('carries its load through a plane', () => {
    close(throughPlane((r) => circleStress(10, 0.2, r, 0.3, 5), 0.3) / (10 * Math.PI * 0.04), 1, 1e-5);
  }, 20000);
});

describe('corner of a rectangle, Newmark 1935, Fadum 1948', () => {
  const table: readonly (readonly [number, number, number])[] = [
    [0.1, 0.1, 0.0047], [0.2, 0.2, 0.0179], [0.5, 0.5, 0.084], [1, 0.5, 0.1202], [1, 1, 0.1752], [1, 2, 0.1999],
    [2, 2, 0.2325], [1, 3, 0.2034], [3, 3, 0.2439], [1, 10, 0.2046], [10, 10, 0.2498],
  ]; // prettier-ignore
  it.each(table)('I(%f, %f) is %f', (m, n, value) => {
    close(cornerInfluence(m, n), value, 1e-4);
    expect(cornerInfluence(n, m)).toBe(cornerInfluence(m, n));
  });
  it('stays positive and rising past V = m²n²', () => {
    let before = 0;
    for (let m = 0.2; m < 20; m += 0.05) {
      const value = cornerInfluence(m, m);
      expect(value).toBeGreaterThan(before);
      before = value;
    }
    close(cornerInfluence(Infinity, Infinity), 0.25, 1e-6);
  });
  it('four corners at m = n = 10 give 0.999 of the pressure in the middle', () => {
    close(rectangleStress(1, { x: 0, y: 0, width: 20, length: 20 }, 0, 0, 1), 0.999, 0.001);
  });
  it('adds corners by sign: two halves make the whole', () => {
    const whole = rectangleStress(5, { x: 0, y: 0, width: 2, length: 3 }, 1.7, 0.4, 0.6);
    const left = rectangleStress(5, { x: -0.5, y: 0, width: 1, length: 3 }, 1.7, 0.4, 0.6);
    const right = rectangleStress(5, { x: 0.5, y: 0, width: 1, length: 3 }, 1.7, 0.4, 0.6);
    close(left + right, whole, 1e-12);
  });
});

describe('strip', () => {
  // Integral of the line load (derived), at 2z/B = 0.8, 1.2, 2.5.
  const table: readonly (readonly [number, number, number, number])[] = [
    [0, 0.881, 0.755, 0.462], [1, 0.489, 0.468, 0.37], [1.5, 0.173, 0.243, 0.285], [3, 0.01, 0.026, 0.095],
  ]; // prettier-ignore
  it.each(table)('at 2x/B = %f', (x, ...values) => {
    [0.8, 1.2, 2.5].forEach((z, i) => {
      close(stripStress(1, 2, x, z), values[i]!, 0.001);
      expect(stripStress(1, 2, -x, z)).toBe(stripStress(1, 2, x, z));
    });
  });
  it.each([0.3, 1, 4])('carries q·B at depth %f', (z) => {
    const steps = 20000;
    let sum = 0;
    for (let i = 0; i < steps; i++) {
      const u = ((i + 0.5) / steps - 0.5) * Math.PI;
      sum += (stripStress(3, 2, z * Math.tan(u), z) * z * Math.PI) / (Math.cos(u) ** 2 * steps);
    }
    close(sum / 6, 1, 1e-6);
  });
  it('the middle of a 1:20 rectangle comes within 0.01', () => {
    for (let z = 0.1; z <= 4; z += 0.1)
      close(rectangleStress(1, { x: 0, y: 0, width: 2, length: 40 }, 0, 0, z), stripStress(1, 2, 0, z), 0.01);
  });
});

describe('farm tyre, Keller 2005, SoilFlex', () => {
  // Inputs printed in the manual of soilphysics 5.1; results derived on a 10 mm grid.
  const contact = tyreContact({ inflation: 200, recommendedInflation: 200, diameter: 1.8, width: 0.4, wheelLoad: 39.24 });
  it('contact patch', () => {
    close(contact.peak, 288.7, 288.7 * 0.005);
    close(contact.length, 0.826, 0.826 * 0.005);
    close(contact.ellipse, 3.09, 3.09 * 0.005);
    close(contact.area, 0.294, 0.294 * 0.005);
    close(contact.mean, 134, 134 * 0.005);
    close(contact.along, 1.3, 0.03); // printed as "about 1.30"; a converged grid gives 1.28
    expect(contact.fits).toBe(true);
  });
  const depths: readonly (readonly [number, number, number])[] = [
    [0.05, 4, 275], [0.1, 5, 262], [0.3, 5, 154], [0.5, 5, 85], [0.7, 5, 51], [1, 5, 28],
  ]; // prettier-ignore
  it.each(depths)('stress at %f m (factor %i) is %f kPa', (z, factor, value) => {
    close(stressUnderTyre(contact, 0, 0, z, factor), value, value * 0.03);
  });
  it('marks tyre data that do not belong together', () => {
    expect(tyreContact({ inflation: 20, recommendedInflation: 20, diameter: 0.5, width: 0.3, wheelLoad: 60 }).fits).toBe(false);
  });
});
