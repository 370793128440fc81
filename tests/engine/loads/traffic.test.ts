import { describe, expect, it } from 'vitest';
import { groundOf, saturationOf, concentrationAt } from '#engine/loads/ground.ts';
import { trafficFlags, weightFlag } from '#engine/loads/load-flags.ts';
import { trafficImpact, wheelPlaces } from '#engine/loads/machine-passes.ts';
import { localWidth, passesAcross } from '#engine/loads/way-width.ts';
import { evenPressureImpact, legsImpact } from '#engine/loads/standing-loads.ts';
import { trafficSettings } from '#engine/loads/traffic-settings.ts';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { startingCoverings } from '#shared/parameters/coverings.ts';
import { vehicles, type StartingVehicle } from '#shared/parameters/vehicles.ts';
import type { Polygon } from '#shared/vocabulary/geometry.ts';
import { type Mat, Vehicle } from '#shared/vocabulary/vehicle.ts';

const settings = trafficSettings(defaultValues);
const machine = (id: StartingVehicle): Vehicle => vehicles.find((vehicle) => vehicle.id === id)!;
const covering = (id: string) => startingCoverings.find((one) => one.id === id)!;
const bare = covering('none');
const sand = groundOf('sand', defaultValues);
const loam = groundOf('silt-loam', defaultValues);
const moist = { water: 0.18, bulkDensity: null, roots: 1 };

describe('starting vehicle classes', () => {
  it('are whole: each weighs what its axles carry', () => {
    for (const vehicle of vehicles) {
      expect(Vehicle.parse(vehicle)).toEqual(vehicle);
      expect(weightFlag(vehicle)).toBeNull();
    }
    expect(new Set(vehicles.map(({ id }) => id)).size).toBe(vehicles.length);
  });
  it('turf machines keep the park rule, road machines do not', () => {
    const impactOf = (vehicle: Vehicle) =>
      trafficImpact([{ vehicle, passes: 1, turning: false }], bare, 'interior', sand, moist, settings);
    const flagged = vehicles.filter((vehicle) =>
      trafficFlags(vehicle, 1, null, impactOf(vehicle), settings).some(({ kind }) => kind === 'park-rule'),
    );
    const kept = vehicles.filter((vehicle) => !flagged.includes(vehicle)).map(({ id }) => id);
    expect(kept).toEqual(['mower', 'utility-cart', 'tractor-45-hp', 'sod-installer']);
  });
});

describe('passes of machines', () => {
  const impact = (id: StartingVehicle, passes: number, turning = false, state = moist, ground = sand, floor = bare) =>
    trafficImpact([{ vehicle: machine(id), passes, turning }], floor, 'edge', ground, state, settings);
  it('no passes leave the ground as it was', () => {
    expect(impact('pickup', 0)).toMatchObject({ peakPressure: 0, rut: 0, wheelPasses: 0, bulkDensity: sand.bulkDensity });
    expect(trafficImpact([], bare, 'edge', sand, moist, settings).rut).toBe(0);
  });
  it('a mower marks neither moist sand nor its density; a lorry does both', () => {
    expect(impact('mower', 10)).toMatchObject({ rut: 0, bulkDensity: sand.bulkDensity });
    expect(impact('articulated-lorry', 10).rut).toBeGreaterThan(0.02);
    expect(impact('articulated-lorry', 10).bulkDensity).toBeGreaterThan(sand.bulkDensity);
  });
  it('two like machines equal one with both passes; order does not matter', () => {
    const pickup = { vehicle: machine('pickup'), passes: 3, turning: false };
    const lift = { vehicle: machine('forklift-small'), passes: 2, turning: true };
    const run = (list: readonly (typeof pickup)[]) => trafficImpact(list, bare, 'edge', sand, moist, settings);
    expect(run([pickup, pickup]).rut).toBeCloseTo(run([{ ...pickup, passes: 6 }]).rut, 12);
    expect(run([pickup, pickup]).bulkDensity).toBeCloseTo(run([{ ...pickup, passes: 6 }]).bulkDensity, 12);
    expect(run([pickup, lift]).rut).toBeCloseTo(run([lift, pickup]).rut, 12);
  });
  it('a rut follows the multi-pass law', () => {
    const [one, eight] = [impact('forklift-small', 1), impact('forklift-small', 8)];
    expect(eight.rut / one.rut).toBeCloseTo(2, 6);
  });
  it('turning is worse, and worst on tracks and skids', () => {
    expect(impact('pickup', 4, true).wheelPasses).toBeCloseTo(2 * impact('pickup', 4).wheelPasses, 9);
    expect(impact('skid-steer', 4, true).wheelPasses).toBeCloseTo(5 * impact('skid-steer', 4).wheelPasses, 9);
    const wet = { ...moist, water: 0.38 };
    expect(impact('skid-steer', 4, true, wet, loam).rut).toBeGreaterThan(impact('skid-steer', 4, false, wet, loam).rut);
  });
  it('wet silt loam ruts deeper than moist', () => {
    const wet = { ...moist, water: 0.38 };
    expect(impact('pickup', 5, false, wet, loam).rut).toBeGreaterThan(2 * impact('pickup', 5, false, moist, loam).rut);
  });
  it('an aluminium roadway spreads a forklift further than plywood, plywood further than nothing', () => {
    const peaks = ['aluminium-panel', 'plywood-geotextile', 'none'].map(
      (id) => impact('forklift-small', 1, false, moist, sand, covering(id)).peakPressure,
    );
    expect(peaks[0]!).toBeLessThan(peaks[1]!);
    expect(peaks[1]!).toBeLessThan(peaks[2]!);
    expect(peaks[2]).toBe(700);
  });
  it('wheels stand symmetrically and inside the track', () => {
    expect(wheelPlaces(1, 2, 0.3)).toEqual([0]);
    expect(wheelPlaces(4, 2, 0.3)).toEqual([-1, 1, -0.7, 0.7]);
    for (const wheels of [2, 4, 8, 16]) {
      const places = wheelPlaces(wheels, 2, 0.33);
      expect(new Set(places).size).toBe(wheels);
      expect(places.reduce((sum, x) => sum + x, 0)).toBeCloseTo(0, 12);
    }
  });
  it('stress goes deeper in wetter ground', () => {
    expect([0, 0.25, 0.5, 0.75, 1].map((saturation) => concentrationAt(saturation, sand))).toEqual([4, 4, 5, 6, 6]);
    expect(saturationOf(0.9, sand)).toBe(1);
    expect(saturationOf(0, sand)).toBe(0);
  });
});

describe('flags', () => {
  const kinds = (id: StartingVehicle, passes: number, floor: string | null, ground = sand, state = moist) => {
    const on = floor === null ? bare : covering(floor);
    const impact = trafficImpact([{ vehicle: machine(id), passes, turning: false }], on, 'edge', ground, state, settings);
    return trafficFlags(machine(id), passes, floor === null ? null : on, impact, settings).map(({ kind }) => kind);
  };
  it('a pickup on bare turf breaks the park rule; on solid panels it does not', () => {
    expect(kinds('pickup', 1, null)).toContain('park-rule');
    expect(kinds('pickup', 1, 'none')).toContain('park-rule');
    expect(kinds('pickup', 1, 'solid-panel')).toEqual([]);
  });
  it('a forklift on walk mesh: feet only, and straight on turf', () => {
    expect(kinds('forklift-small', 1, 'walk-mesh')).toEqual(expect.arrayContaining(['park-rule', 'covering-feet-only']));
  });
  it('a telehandler is above the rating of plywood and above the caution for one wheel', () => {
    expect(kinds('telehandler', 1, 'plywood-geotextile')).toEqual(expect.arrayContaining(['covering-rating', 'wheel-load']));
  });
  it('a lorry on bare wet loam is above the bearing strength', () => {
    expect(kinds('articulated-lorry', 1, null, loam, { ...moist, water: 0.4 })).toContain('bearing-strength');
  });
  it('a lorry route used again', () => {
    expect(kinds('articulated-lorry', 2, 'aluminium-panel')).not.toContain('lorry-route-used-again');
    expect(kinds('articulated-lorry', 3, 'aluminium-panel')).toContain('lorry-route-used-again');
  });
  it('a machine heavier or lighter than its axles', () => {
    const pickup = machine('pickup');
    expect(weightFlag({ ...pickup, weight: 33 })).toMatchObject({ kind: 'weight-off-axles', value: 33, limit: 32 });
    expect(weightFlag({ ...pickup, weight: 20 })).toMatchObject({ value: 20, limit: 32 });
    expect(weightFlag({ ...pickup, weight: 32.5 })).toBeNull();
  });
});

describe('the width of a way', () => {
  // A road 6 m wide with a throat of 3 m from y = 20 to 24.
  const road: Polygon = [[-3, 0], [3, 0], [3, 20], [1.5, 20], [1.5, 24], [3, 24], [3, 40], [-3, 40], [-3, 24], [-1.5, 24], [-1.5, 20], [-3, 20]]; // prettier-ignore
  it('is that between its sides, also in its corners and after a bend', () => {
    expect(localWidth(road, 0, 10)).toBeCloseTo(6, 9);
    expect(localWidth(road, 0, 22)).toBeCloseTo(3, 9);
    expect(localWidth(road, 2.5, 0.5)).toBeCloseTo(6, 9);
    const bend: Polygon = [[0, 0], [30, 0], [30, 4], [4, 4], [4, 30], [0, 30]]; // prettier-ignore
    expect([localWidth(bend, 20, 2), localWidth(bend, 2, 20)]).toEqual([expect.closeTo(4, 9), expect.closeTo(4, 9)]);
  });
  it('of a triangle, where every edge faces the others a little, is finite', () => {
    expect(localWidth([[0, 0], [10, 0], [5, 8.66]], 5, 3)).toBeLessThan(10); // prettier-ignore
  });
  it('takes every pass, whatever the wander and the width', () => {
    const pickup = { vehicle: machine('pickup'), passes: 10, turning: false };
    const through = (width: number, wander: number): number => {
      const { touched, machine: spot } = passesAcross(width, pickup, wander);
      return touched * spot.passes * width;
    };
    for (const width of [2, 6, 12])
      for (const wander of [0.1, 0.6, 2]) expect(through(width, wander)).toBeCloseTo(through(2, 0.6), 9);
    expect(passesAcross(12, pickup, 0.6).touched).toBeLessThan(passesAcross(2, pickup, 0.6).touched);
    expect(() => passesAcross(0, pickup, 0.6)).toThrow(RangeError);
  });
});

describe('loads that stand', () => {
  const plywood = covering('plywood-geotextile');
  const legs = { load: 20, plate: 0.3, spacing: 2.4 };
  it('a covering spreads a base plate; days of standing spread less', () => {
    const open = legsImpact(legs, bare, 'interior', sand, moist, 120);
    const under = legsImpact(legs, plywood, 'interior', sand, moist, 120);
    expect(open.peak).toBeCloseTo(20 / 0.09, 9);
    expect(under.peak).toBeLessThan(0.5 * open.peak);
    expect(under.peak).toBeGreaterThan(legsImpact(legs, plywood, 'interior', sand, moist, 0).peak);
    expect(under.pressed).toBeGreaterThan(open.pressed);
  });
  it('legs close together press harder than far apart', () => {
    const close = legsImpact({ ...legs, spacing: 0.5 }, plywood, 'interior', sand, moist, 24);
    expect(close.peak).toBeGreaterThan(legsImpact(legs, plywood, 'interior', sand, moist, 24).peak);
  });
  it('a mat brings an outrigger down to its own area, a bending one less far; the pressure on the ground is what the park rule meets', () => {
    const crane = (mat: Mat | undefined): Vehicle => ({
      ...machine('crane-outriggers'),
      axles: [{ load: 400, wheels: 2, contactPressure: 200 / 0.36, mat }],
    });
    const on = (mat?: Mat) =>
      trafficImpact([{ vehicle: crane(mat), passes: 1, turning: false }], bare, 'interior', loam, moist, settings);
    const [pad, rigid, timber] = [
      undefined,
      { side: 2, thickness: 0.2, modulus: null },
      { side: 2, thickness: 0.1, modulus: 9000 },
    ].map(on);
    expect(pad!.peakPressure).toBeCloseTo(200 / 0.36, 6);
    expect(rigid!.peakPressure).toBeCloseTo(50, 6);
    expect(timber!.peakPressure).toBeGreaterThan(50);
    expect(timber!.peakPressure).toBeLessThan(200 / 0.36);
    expect(timber!.bulkDensity).toBeGreaterThanOrEqual(rigid!.bulkDensity);
    expect(rigid!.contactPressure).toBeCloseTo(50, 6);
  });
  it('fill and ice press evenly to depth', () => {
    const fill = evenPressureImpact(4.79, loam, moist);
    expect(fill.stressAt75).toBeCloseTo(4.79, 3);
    expect(fill.bulkDensity).toBe(loam.bulkDensity);
    expect(evenPressureImpact(0, loam, moist).peak).toBe(0);
    expect(evenPressureImpact(300, loam, { ...moist, water: 0.4 }).bulkDensity).toBeGreaterThan(loam.bulkDensity);
  });
});
