import { describe, expect, it } from 'vitest';
import { lightFromFlux, lightFromRadiation, meanFlux, molPerMegajoule, photonsPerJoule } from '#engine/light/photons.ts';
import { defaultValues } from '#shared/parameters/catalogue.ts';

const within = (value: number, printed: number, tolerance: number) =>
  expect(Math.abs(value - printed), `${value} against ${printed}`).toBeLessThanOrEqual(tolerance);
const factor = defaultValues['light.molPerMegajoule'];

describe('from radiation to photons', () => {
  it('the factor in use is that of Faust & Logan 2018: 0.007265 mol per Wh', () => {
    within(factor, 0.007265 / 0.0036, 1e-3);
    within(molPerMegajoule(0.45, 4.48), factor, 0.0025);
  });
  it('products of share and yield (derived)', () => {
    within(molPerMegajoule(0.45, 4.57), 2.057, 1e-3);
    within(molPerMegajoule(0.5, 4.57), 2.285, 1e-3);
  });
  it('20 MJ, and the day of FAO-56 example 17 (22.65 MJ)', () => {
    within(lightFromRadiation(20, factor), 40.4, 0.1);
    within(lightFromRadiation(22.65, factor), 45.7, 0.1);
  });
  it.each([
    [400, 3.3437],
    [500, 4.1797],
    [550, 4.5976],
    [600, 5.0156],
    [700, 5.8515],
  ])('one wavelength, %i nm (formula of the NREL PAR page)', (wavelength, printed) =>
    within(photonsPerJoule(wavelength), printed, 1e-3),
  );
  it('constant flux: 500 µmol/m²/s for 12 h is 21.6 mol', () => {
    expect(lightFromFlux(500, 12)).toBeCloseTo(21.6, 12);
    expect(meanFlux(21.6, 12)).toBeCloseTo(500, 9);
    expect(meanFlux(1, 0)).toBe(0);
  });
  it('San Francisco airport by month (EnergyPlus auxiliary manual, TMY3; derived with the published factor)', () => {
    const global = [2136, 3160, 4402, 5672, 6419, 7148, 7129, 6401, 5460, 3761, 2530, 2127];
    const light = [15.5, 23.0, 32.0, 41.2, 46.6, 51.9, 51.8, 46.5, 39.7, 27.3, 18.4, 15.5];
    global.forEach((wattHours, month) => within(lightFromRadiation(wattHours * 0.0036, factor), light[month]!, 0.1));
  });
  it('is proportional to the light', () =>
    expect(lightFromRadiation(3 * 7.3, factor)).toBeCloseTo(3 * lightFromRadiation(7.3, factor), 12));
});
