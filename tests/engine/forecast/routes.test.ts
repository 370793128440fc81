import { describe, expect, test } from 'vitest';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Polygon } from '#shared/vocabulary/geometry.ts';
import { foresee } from '#engine/forecast/foresee.ts';
import { asking, july } from '#tests/engine/forecast/sample-question.ts';

// A way 8 m wide with a throat of 4 m from y = −4 to 4, and the throat as a zone of its own.
const way: Polygon = [[-4, -40], [4, -40], [4, -4], [2, -4], [2, 4], [4, 4], [4, 40], [-4, 40], [-4, 4], [-2, 4], [-2, -4], [-4, -4]]; // prettier-ignore
const throat: Polygon = [[-2, -4], [2, -4], [2, 4], [-2, 4]]; // prettier-ignore
const passes = (zone: string, turning = false) => ({
  zone,
  vehicle: 'forklift-small',
  at: '2027-07-12T08:00',
  passes: 30,
  turning,
});
const driven = (zones: Booking['zones'], traffic: Booking['traffic']): Booking => ({
  ...july,
  zones,
  layers: [],
  crowds: [],
  traffic,
});
const route = { letter: 'F', name: 'Way', use: 'haul-route', outline: way } as const;

/** Live cover by place on the evening after, cells of 1 m. */
const coverAt = (booking: Booking) => {
  const { cells } = foresee(asking(booking, { cellSize: 1 }));
  return (x: number, y: number): number => {
    const off = (cell: number): number => Math.hypot(cells.x[cell]! - x, cells.y[cell]! - y);
    const nearest = cells.x.reduce((best, _, cell) => (off(cell) < off(best) ? cell : best), 0);
    return cells.coverAfter[cells.group[nearest]!]!;
  };
};

describe('machines on a drawn way', () => {
  const plain = coverAt(driven([route], [passes('F')]));
  test('wear a throat more than the road, and the road alike along its length and in its corners', () => {
    expect(plain(0.5, 0.5)).toBeLessThan(plain(0.5, 20.5) - 0.02);
    for (const y of [-39.5, -20.5, 20.5, 39.5]) expect(plain(3.5, y)).toBeCloseTo(plain(0.5, 20.5), 6);
  });
  test('wear it more still where it is entered as a gate throat, and most where they turn in it', () => {
    const gate = { letter: 'G', name: 'Gate', use: 'gate', outline: throat } as const;
    const squeezed = coverAt(driven([gate, route], [passes('F'), passes('G')]));
    const turned = coverAt(driven([gate, route], [passes('F'), passes('G', true)]));
    expect(squeezed(0.5, 0.5)).toBeLessThan(plain(0.5, 0.5));
    expect(turned(0.5, 0.5)).toBeLessThan(squeezed(0.5, 0.5));
    expect(squeezed(0.5, 20.5)).toBe(plain(0.5, 20.5));
  });
  test('a crane on mats leaves less than one on its pads', () => {
    const pad = { letter: 'C', name: 'Crane', use: 'crane-pad', outline: throat } as const;
    const after = (vehicle: string): number =>
      foresee(asking(driven([pad], [{ ...passes('C'), vehicle, passes: 1 }]))).zones.find(({ letter }) => letter === 'C')!
        .pressure;
    expect(after('crane-on-mats')).toBeLessThan(0.5 * after('crane-outriggers'));
  });
});
