import { expect, test } from 'vitest';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { grasses } from '#shared/vocabulary/turf.ts';
import { iceCase, iceHalfKillDays, keptUnderIce } from '#engine/injury/ice-encasement.ts';

const steepness = defaultValues['ice.steepness'];

test('half are alive after the half-killing days, fewer the longer', () => {
  for (const grass of grasses) {
    const days = iceHalfKillDays(grass, defaultValues);
    expect(keptUnderIce(days, days, steepness)).toBe(0.5);
    expect(keptUnderIce(days * 1.2, days, steepness)).toBeLessThan(keptUnderIce(days, days, steepness));
  }
});

test('no days, no loss', () => expect(keptUnderIce(0, 20, steepness)).toBe(1));

test('no ice is neither case', () => expect(iceCase(false, false)).toBe('none'));
