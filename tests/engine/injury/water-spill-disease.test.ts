import { describe, expect, it } from 'vitest';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { diseasePressure, diseaseRisk } from '#engine/injury/disease-risk.ts';
import { diseaseTraitsOf, spillTraitsOf, waterloggingTraitsOf } from '#engine/injury/injury-traits.ts';
import { spillKept, spillKeptVisible } from '#engine/injury/spill.ts';
import { crownsKeptWet, leafKeptWet, oxygenDebt } from '#engine/injury/waterlogging.ts';

describe('waterlogging', () => {
  const traits = waterloggingTraitsOf(defaultValues);
  it('costs nothing while the pores hold air', () => {
    expect(oxygenDebt(500, 0.1, 1, 30, traits)).toBe(0);
    expect(leafKeptWet(0, traits)).toBe(1);
  });
  it('takes half the leaf, then half the crowns, in the hours of the catalogue', () => {
    const debt = (hours: number) => oxygenDebt(hours, 0, 1, 20, traits);
    expect(leafKeptWet(debt(traits.halfHoursLeaf), traits)).toBeCloseTo(0.5, 12);
    expect(crownsKeptWet(debt(traits.halfHoursCrowns), traits)).toBeCloseTo(0.5, 12);
    expect(crownsKeptWet(debt(traits.halfHoursLeaf), traits)).toBeGreaterThan(0.5);
  });
  it('is worse longer, wetter, sealed and warmer', () => {
    const usual = oxygenDebt(48, 0.05, 0.5, 20, traits);
    expect(oxygenDebt(72, 0.05, 0.5, 20, traits)).toBeGreaterThan(usual);
    expect(oxygenDebt(48, 0.01, 0.5, 20, traits)).toBeGreaterThan(usual);
    expect(oxygenDebt(48, 0.05, 0.9, 20, traits)).toBeGreaterThan(usual);
    expect(oxygenDebt(48, 0.05, 0.5, 25, traits)).toBeGreaterThan(usual);
  });
});

describe('a spill on part of a zone', () => {
  const traits = spillTraitsOf(defaultValues);
  const spill = { agent: 'petrol', areaShare: 0.2, treatedAfter: null } as const;
  it('keeps the rest, and is whole again when its weeks are over', () => {
    expect(spillKept(spill, -1, traits)).toBe(1);
    expect(spillKept(spill, 0, traits)).toBeCloseTo(0.8, 12);
    expect(spillKept(spill, 14, traits)).toBeCloseTo(0.8, 12);
    expect(spillKept(spill, 21, traits)).toBeCloseTo(0.9, 12);
    expect(spillKept(spill, 28, traits)).toBe(1);
  });
  it('shows after two days and in full after seven', () => {
    expect(spillKeptVisible(spill, 2, traits)).toBe(1);
    expect(spillKeptVisible(spill, 4, traits)).toBeLessThan(1);
    expect(spillKeptVisible(spill, 7, traits)).toBeCloseTo(0.8, 12);
  });
  it('is never better untreated', () => {
    for (let day = 0; day < 80; day++) {
      for (const agent of ['motorOil', 'brakeFluid', 'salt', 'propyleneGlycol', 'iceMelt'] as const) {
        const treated = spillKept({ agent, areaShare: 0.5, treatedAfter: 10 }, day, traits);
        expect(treated).toBeGreaterThanOrEqual(spillKept({ agent, areaShare: 0.5, treatedAfter: null }, day, traits) - 1e-12);
      }
    }
  });
});

describe('disease risk', () => {
  const traits = diseaseTraitsOf(defaultValues);
  it('is nothing while the leaf is dry, rises with wet warm hours and falls again when dry', () => {
    expect(diseaseRisk(diseasePressure(0, 0, 28, traits), traits)).toBe(0);
    let pressure = 0;
    let risk = 0;
    for (let day = 0; day < 5; day++) {
      pressure = diseasePressure(pressure, 24, 28, traits);
      expect(diseaseRisk(pressure, traits)).toBeGreaterThan(risk);
      risk = diseaseRisk(pressure, traits);
    }
    expect(risk).toBeLessThan(1);
    for (let day = 0; day < 10; day++) pressure = diseasePressure(pressure, 0, 28, traits);
    expect(diseaseRisk(pressure, traits)).toBeLessThan(risk);
    expect(diseaseRisk(diseasePressure(0, 24, 10, traits), traits)).toBeLessThan(
      diseaseRisk(diseasePressure(0, 24, 28, traits), traits),
    );
  });
  it('is one half after the hours of the catalogue', () => expect(diseaseRisk(traits.halfHours, traits)).toBeCloseTo(0.5, 12));
});
