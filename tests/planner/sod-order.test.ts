import { describe, expect, it } from 'vitest';
import { optimiserOnThisThread } from '#platform/optimiser/optimiser-on-this-thread.ts';
import { schedulePlan } from '#planner/plan-recovery.ts';
import { rollsFor, sodUnits } from '#planner/sod-loads.ts';
import { nearFarm, sampleProblem } from '#tests/planner/sample-problem.ts';

const foot = 0.3048;
const pound = 0.45359237;
const squareFoot = foot * foot;
const density = (poundsPerCubicFoot: number): number => (poundsPerCubicFoot * pound) / foot ** 3;

describe('sod by weight, rolls and trucks', () => {
  /* Derived: w (lb/ft²) = thickness (in)/12 × density (lb/ft³); load of 45,000 lb at 115 lb/ft³. */
  const table: readonly (readonly [inches: number, at100: number, at115: number, at120: number, load: number])[] = [
    [0.5, 4.17, 4.79, 5.0, 9391],
    [0.75, 6.25, 7.19, 7.5, 6261],
    [1.0, 8.33, 9.58, 10.0, 4696],
    [1.25, 10.42, 11.98, 12.5, 3757],
    [1.5, 12.5, 14.38, 15.0, 3130],
    [1.75, 14.58, 16.77, 17.5, 2683],
    [2.0, 16.67, 19.17, 20.0, 2348],
  ];
  it.each(table)('%f in: weight per area and area per load', (inches, at100, at115, at120, load) => {
    const farm = { ...nearFarm, thickCut: inches * 0.0254, payload: 45000 * pound, rollWidth: 0.2, rollLength: 0.5 };
    const perArea = (pounds: number): number => (sodUnits(farm, 'thick', density(pounds))!.weightPerArea / pound) * squareFoot;
    expect(perArea(100)).toBeCloseTo(at100, 2);
    expect(Math.abs(perArea(115) - at115)).toBeLessThanOrEqual(0.006);
    expect(Math.abs(perArea(120) - at120)).toBeLessThanOrEqual(0.006);
    // Before whole rolls are taken, a load is payload / weight.
    expect(Math.abs(45000 / perArea(115) - load)).toBeLessThanOrEqual(1);
    const units = sodUnits(farm, 'thick', density(115))!;
    expect(units.rollsPerTruck * units.rollWeight).toBeLessThanOrEqual(farm.payload);
    expect((units.rollsPerTruck + 1) * units.rollWeight).toBeGreaterThan(farm.payload);
  });

  /* Derived: big rolls of 4 ft × 30–35 ft for 10,000 ft²: 84 or 72, with 5 % waste 88 or 75. */
  it.each([
    [30, 0, 84],
    [35, 0, 72],
    [30, 0.05, 88],
    [35, 0.05, 75],
  ])('rolls of 4 ft × %i ft with %f waste: %i, the ceiling after the waste', (length, waste, rolls) => {
    expect(rollsFor(10000 * squareFoot, waste, 4 * foot * length * foot)).toBe(rolls);
  });

  it('has no units for a cut the farm does not make, or a roll no truck may carry', () => {
    expect(sodUnits({ ...nearFarm, thickCut: null }, 'thick', 1842)).toBeNull();
    expect(sodUnits({ ...nearFarm, payload: 100 }, 'thick', 1842)).toBeNull();
  });

  it('needs two to three times the trucks for the thick cut', () => {
    // Thick 1.25 in against regular 1/2 in: 2.5 by the weights above.
    const farm = { ...nearFarm, thinCut: 0.0127, thickCut: 0.03175 };
    const ratio = sodUnits(farm, 'thin', 1842)!.truckArea / sodUnits(farm, 'thick', 1842)!.truckArea;
    expect(ratio).toBeGreaterThan(2);
    expect(ratio).toBeLessThan(3);
  });
});

describe('the trucks of a plan', () => {
  it('come when their first roll is wanted, in the order of laying, and say how long the sod was rolled up', async () => {
    const problem = sampleProblem({ zones: 4, days: 10, farms: [nearFarm] });
    const outcome = await schedulePlan(problem, optimiserOnThisThread());
    if (outcome.kind !== 'plan') throw new Error('no plan');
    const [order] = outcome.plan.orders;
    expect(order!.trucks.length).toBeGreaterThan(2);
    order!.trucks.forEach((truck, index) => {
      if (index > 0) expect(truck.begin >= order!.trucks[index - 1]!.begin).toBe(true);
      expect(
        truck.cut < truck.leave && truck.leave < truck.arrive && truck.arrive <= truck.begin && truck.begin < truck.down,
      ).toBe(true);
      expect(truck.hoursInRoll).toBeGreaterThanOrEqual(nearFarm.haul + problem.settings.cutHours);
      expect(truck.hoursInRoll).toBeLessThanOrEqual(problem.settings.rollHours);
    });
    expect(order!.price).toBe(Math.round(order!.ordered * nearFarm.thickPrice!));
    expect(order!.cancelFee).toBe(Math.round(order!.ordered * nearFarm.thickPrice! * nearFarm.cancelShare));
    expect(order!.freight).toBe(order!.trucks.length * nearFarm.truckPrice!);
  });
});
