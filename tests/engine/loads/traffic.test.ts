import { describe, expect, it } from 'vitest';
import { groundOf, saturationOf, concentrationAt } from '#engine/loads/ground.ts';
import { trafficFlags, weightFlag } from '#engine/loads/load-flags.ts';
import { trafficImpact, wheelPlaces } from '#engine/loads/machine-passes.ts';
import { localWidth, passesAcross, type Route, routeImpact } from '#engine/loads/route-impact.ts';
import { evenPressureImpact, legsImpact, outriggerImpact } from '#engine/loads/standing-loads.ts';
import { trafficByZone } from '#engine/loads/traffic-by-zone.ts';
import { trafficSettings } from '#engine/loads/traffic-settings.ts';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { startingCoverings } from '#shared/parameters/coverings.ts';
import { vehicles, type StartingVehicle } from '#shared/parameters/vehicles.ts';
import { Vehicle } from '#shared/vocabulary/vehicle.ts';

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
    const flagged = vehicles.filter((vehicle) =>
      trafficFlags(vehicle, 1, null, { peakPressure: 0, strength: 1 }, settings).some(({ kind }) => kind === 'park-rule'),
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

describe('a route cell by cell', () => {
  // A road 6 m wide with a throat of 3 m from y = 20 to 24.
  const route: Route = {
    outline: [[-3, 0], [3, 0], [3, 20], [1.5, 20], [1.5, 24], [3, 24], [3, 40], [-3, 40], [-3, 24], [-1.5, 24], [-1.5, 20], [-3, 20]],
    gates: [{ x: 0, y: 22, radius: 2 }],
    turns: [{ x: 0, y: 38, radius: 2 }],
  }; // prettier-ignore
  const xs = Float64Array.from([0, 0, 0, 9, 1]);
  const ys = Float64Array.from([10, 22, 38, 10, 10]);
  const cells = routeImpact(
    route,
    xs,
    ys,
    [{ vehicle: machine('pickup'), passes: 20, turning: false }],
    bare,
    'edge',
    sand,
    moist,
    settings,
  );
  it('finds the cells on the route and their local width', () => {
    expect(cells.map(({ cell }) => cell)).toEqual([0, 1, 2, 4]);
    expect(cells.map(({ width }) => width)).toEqual([6, 3, expect.any(Number), 6]);
    expect(localWidth(route.outline, 0, 22)).toBeCloseTo(3, 9);
  });
  const wear = (i: number): number => cells[i]!.touched * cells[i]!.wheelPasses;
  it('a throat takes twice the passes of the road, and more for being a gate', () => {
    expect(wear(1) / wear(0)).toBeCloseTo(2 * settings.gate, 6);
    expect(cells[1]!.gate).toBe(true);
    expect(cells[1]!.rut).toBeGreaterThan(cells[0]!.rut);
  });
  it('a turn counts double for a steered machine', () => {
    expect(cells[2]!.turning).toBe(true);
    expect((wear(2) * cells[2]!.width) / (wear(0) * cells[0]!.width)).toBeCloseTo(settings.turning.steered, 6);
  });
  it('wheel passes are conserved whatever the wander', () => {
    for (const wander of [0.1, 0.6, 2]) {
      const [cell] = routeImpact(
        route,
        xs,
        ys,
        [{ vehicle: machine('pickup'), passes: 20, turning: false }],
        bare,
        'edge',
        sand,
        moist,
        {
          ...settings,
          wander,
        },
      );
      expect(cell!.touched * cell!.wheelPasses).toBeCloseTo(wear(0), 9);
    }
  });
});

describe('traffic of a booking', () => {
  const pass = { zone: 'H', vehicle: 'pickup', at: '2027-07-14T07:00', passes: 3, turning: false };
  it('is gathered zone by zone', () => {
    const zones = trafficByZone([pass, { ...pass, zone: 'A', turning: true }, { ...pass, passes: 5 }], vehicles);
    expect(zones.get('H')!.map(({ passes }) => passes)).toEqual([3, 5]);
    expect(zones.get('A')![0]).toMatchObject({ turning: true, vehicle: { id: 'pickup' } });
    expect(zones.get('B')).toBeUndefined();
  });
  it('refuses a machine that is not known', () => {
    expect(() => trafficByZone([{ ...pass, vehicle: 'airship' }], vehicles)).toThrow(/airship/);
  });
  it('spreads over the width it has', () => {
    const machines = [{ vehicle: machine('pickup'), passes: 10, turning: false }];
    const [narrow, wide] = [2, 12].map((width) => passesAcross(width, machines, settings));
    expect(wide!.touched).toBeLessThan(narrow!.touched);
    expect(wide!.touched * wide!.machines[0]!.passes * 12).toBeCloseTo(narrow!.touched * narrow!.machines[0]!.passes * 2, 9);
    expect(() => passesAcross(0, machines, settings)).toThrow(RangeError);
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
  it('a mat brings an outrigger down to its own area', () => {
    const mat = { side: 2, thickness: 0.2, modulus: null };
    const onMat = outriggerImpact(200, 0.6, mat, bare, 'interior', loam, moist, 8);
    expect(outriggerImpact(200, 0.6, null, bare, 'interior', loam, moist, 8).peak).toBeCloseTo(200 / 0.36, 6);
    expect(onMat.peak).toBeCloseTo(50, 6);
    const timber = outriggerImpact(200, 0.6, { side: 2, thickness: 0.1, modulus: 9000 }, bare, 'interior', loam, moist, 8);
    expect(timber.peak).toBeGreaterThan(onMat.peak);
    expect(timber.peak).toBeLessThan(200 / 0.36);
    expect(timber.bulkDensity).toBeGreaterThanOrEqual(onMat.bulkDensity);
  });
  it('fill and ice press evenly to depth', () => {
    const fill = evenPressureImpact(4.79, loam, moist);
    expect(fill.stressAt75).toBeCloseTo(4.79, 3);
    expect(fill.bulkDensity).toBe(loam.bulkDensity);
    expect(evenPressureImpact(0, loam, moist).peak).toBe(0);
    expect(evenPressureImpact(300, loam, { ...moist, water: 0.4 }).bulkDensity).toBeGreaterThan(loam.bulkDensity);
  });
});
