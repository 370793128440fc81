import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { groundOf } from '#engine/loads/ground.ts';
import { trafficImpact } from '#engine/loads/machine-passes.ts';
import { type PanelPosition, pressuresUnder, pressureUnder, type SpreadingCovering } from '#engine/loads/panel/pressure-under.ts';
import { plateStiffness, relativeRadius } from '#engine/loads/panel/plate-on-springs.ts';
import { circleShare } from '#engine/loads/stress/circle-stress.ts';
import { pointStress } from '#engine/loads/stress/point-stress.ts';
import { trafficSettings } from '#engine/loads/traffic-settings.ts';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { startingCoverings } from '#shared/parameters/coverings.ts';
import { vehicles } from '#shared/parameters/vehicles.ts';
import { soils } from '#shared/vocabulary/turf.ts';

const settings = trafficSettings(defaultValues);
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const positions = fc.constantFrom<PanelPosition>('interior', 'edge', 'corner');
const spreads = fc.constantFrom<SpreadingCovering['spread']>('plate', 'beam');
const creep = { plastic: 0.14, wood: 0.03, metal: 0 };

describe('panels', () => {
  const panels = fc.record({
    spread: spreads,
    thickness: number(0.005, 0.15),
    modulus: number(100, 70000),
    panelWidth: number(0.5, 3),
  });
  const springs = number(5e3, 130e3);
  it('a thicker or stiffer panel never raises the peak on the soil', () => {
    fc.assert(
      fc.property(
        panels,
        springs,
        positions,
        number(0.5, 80),
        number(0.003, 0.3),
        number(1, 3),
        number(1, 3),
        (panel, k, position, load, area, thicker, stiffer) => {
          const ground = { springs: k, poisson: 0.3, creep, standingHours: 0 };
          const better = { ...panel, thickness: panel.thickness * thicker, modulus: panel.modulus * stiffer };
          expect(pressureUnder(load, area, better, ground, position).peak).toBeLessThanOrEqual(
            pressureUnder(load, area, panel, ground, position).peak * (1 + 1e-9),
          );
        },
      ),
    );
  });
  it('nor does it under several wheels of one axle', () => {
    fc.assert(
      fc.property(
        panels,
        springs,
        positions,
        number(0.5, 80),
        number(0.003, 0.1),
        number(0.25, 2),
        number(1, 3),
        (panel, k, position, load, area, apart, thicker) => {
          const ground = { springs: k, poisson: 0.3, creep, standingHours: 0 };
          const wheels = [0, apart].map((x) => ({ load, area, x, y: 0 }));
          const peak = (covering: SpreadingCovering) =>
            Math.max(...pressuresUnder(wheels, covering, ground, position).map((one) => one.peak));
          expect(peak({ ...panel, spread: 'plate', thickness: panel.thickness * thicker })).toBeLessThanOrEqual(
            peak({ ...panel, spread: 'plate' }) * (1 + 1e-9),
          );
        },
      ),
    );
  });
  it('softer soil raises l and lowers the pressure', () => {
    fc.assert(
      fc.property(
        panels,
        springs,
        positions,
        number(0.5, 80),
        number(0.003, 0.3),
        number(0.2, 1),
        (panel, k, position, load, area, softer) => {
          const peak = (factor: number) =>
            pressureUnder(load, area, panel, { springs: k * factor, poisson: 0.3, creep, standingHours: 0 }, position).peak;
          expect(peak(softer)).toBeLessThanOrEqual(peak(1) * (1 + 1e-9));
          const plate = { modulus: panel.modulus * 1000, thickness: panel.thickness, poisson: 0.3, springs: k };
          expect(relativeRadius({ ...plate, springs: k * softer })).toBeGreaterThanOrEqual(relativeRadius(plate));
          expect(plateStiffness(plate)).toBeGreaterThan(0);
        },
      ),
    );
  });
  it('an edge is never better than the middle, nor a corner than an edge, nor any of them above the contact pressure', () => {
    fc.assert(
      fc.property(panels, springs, number(0.5, 80), number(0.003, 0.3), (panel, k, load, area) => {
        const ground = { springs: k, poisson: 0.3, creep, standingHours: 0 };
        const [inside, edge, corner] = (['interior', 'edge', 'corner'] as const).map(
          (position) => pressureUnder(load, area, panel, ground, position).peak,
        );
        expect(edge!).toBeGreaterThanOrEqual(inside! * (1 - 1e-9));
        expect(corner!).toBeGreaterThanOrEqual(edge! * (1 - 1e-9));
        expect(corner!).toBeLessThanOrEqual((load / area) * (1 + 1e-9));
      }),
    );
  });
});

describe('stress', () => {
  it('lies between nothing and the pressure, and falls away from the axis', () => {
    fc.assert(
      fc.property(number(0, 5), number(0.02, 10), number(3, 6), number(0, 2), (r, z, factor, further) => {
        const share = circleShare(r, z, factor);
        expect(share).toBeGreaterThanOrEqual(-1e-9);
        expect(share).toBeLessThanOrEqual(1 + 1e-9);
        expect(circleShare(r + further, z, factor)).toBeLessThanOrEqual(share + 2e-6);
        expect(pointStress(1, r + further, z, factor)).toBeLessThanOrEqual(pointStress(1, r, z, factor));
      }),
    );
  });
});

describe('machines', () => {
  const cases = fc.record({
    soil: fc.constantFrom(...soils),
    vehicle: fc.constantFrom(...vehicles),
    covering: fc.constantFrom(...startingCoverings),
    position: positions,
    passes: number(1, 60),
    turning: fc.boolean(),
    water: number(0.05, 0.45),
    roots: number(0, 1),
  });
  type Case = typeof cases extends fc.Arbitrary<infer One> ? One : never;
  const impact = ({ soil, vehicle, covering, position, passes, turning, water, roots }: Case) =>
    trafficImpact(
      [{ vehicle, passes, turning }],
      covering,
      position,
      groundOf(soil, defaultValues),
      { water, bulkDensity: null, roots },
      settings,
    );
  const worse = (one: ReturnType<typeof impact>, other: ReturnType<typeof impact>): void => {
    expect(one.rut).toBeGreaterThanOrEqual(other.rut - 1e-12);
    expect(one.bulkDensity).toBeGreaterThanOrEqual(other.bulkDensity - 1e-12);
    expect(one.wheelPasses).toBeGreaterThanOrEqual(other.wheelPasses - 1e-9);
  };
  it('more passes are never better', () => {
    fc.assert(
      fc.property(cases, number(0, 40), (one, more) => worse(impact({ ...one, passes: one.passes + more }), impact(one))),
    );
  });
  it('turning is never better than driving straight', () => {
    fc.assert(fc.property(cases, (one) => worse(impact({ ...one, turning: true }), impact({ ...one, turning: false }))));
  });
  it('wetter loam is never better', () => {
    fc.assert(
      fc.property(cases, fc.constantFrom('sandy-loam', 'silt-loam', 'clay-loam'), number(0, 0.2), (one, soil, wetter) => {
        const dry = impact({ ...one, soil });
        const wet = impact({ ...one, soil, water: one.water + wetter });
        worse(wet, dry);
        expect(wet.strength).toBeLessThanOrEqual(dry.strength * (1 + 1e-9));
        // Neighbouring wheels reach a spot a little less in wetter ground, so the stress itself is held only loosely.
        expect(wet.stressAt75).toBeGreaterThanOrEqual(dry.stressAt75 * 0.95);
      }),
    );
  });
  it('fewer roots are never better', () => {
    fc.assert(fc.property(cases, number(0, 1), (one, part) => worse(impact({ ...one, roots: one.roots * part }), impact(one))));
  });
  it('the same input gives the same numbers', () => {
    fc.assert(
      fc.property(cases, (one) => {
        expect(impact(one)).toEqual(impact(one));
      }),
    );
  });
});
