import { describe, expect, test } from 'vitest';
import { catalogue } from '#shared/parameters/catalogue.ts';
import { grasses, seasonOf, soils } from '#shared/vocabulary/turf.ts';
import { zoneUses } from '#shared/vocabulary/booking.ts';
import { explanations, figureKinds } from '#shared/wording/explanations.ts';

const names = Object.keys(catalogue);

describe('every figure of the sheet can be opened', () => {
  test.each(figureKinds)('%s says how it is found, and rests on numbers that exist for every grass, soil and use', (kind) => {
    const { how, numbers, standing, title } = explanations[kind];
    expect(title).not.toBe('');
    expect(standing).not.toBe('');
    expect(how.length).toBeGreaterThan(0);
    for (const wanted of numbers)
      for (const grass of grasses)
        for (const soil of soils)
          for (const use of zoneUses) {
            const name = wanted
              .replace('{season}', seasonOf(grass))
              .replace('{soil}', soil)
              .replace('{grass}', grass)
              .replace('{use}', use);
            const exists = name.endsWith('.') ? names.some((one) => one.startsWith(name)) : names.includes(name);
            if (!exists) expect.fail(`${name} is not in the catalogue`);
          }
  });
});
