import { describe, expect, it } from 'vitest';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import { smallVenue } from '#tests/contract/small-venue.ts';
import { halvesOf, waysFrom } from '#services/plan/access.ts';

/* A field of letters, one cell of 2 m each, the first row the one with the highest y; the middle of the field is at 0 0. */

const fieldOf = (rows: readonly string[]): Pick<Forecast, 'cells' | 'zones'> => {
  const letters = [...new Set(rows.join(''))].toSorted();
  const x: number[] = [];
  const y: number[] = [];
  const zone: number[] = [];
  rows.toReversed().forEach((row, up) =>
    [...row].forEach((letter, right) => {
      x.push(2 * (right - row.length / 2) + 1);
      y.push(2 * (up - rows.length / 2) + 1);
      zone.push(letters.indexOf(letter));
    }),
  );
  return {
    cells: { ...({} as Forecast['cells']), size: 2, x, y, zone },
    zones: letters.map((letter) => ({ ...({} as Forecast['zones'][number]), letter })),
  };
};

const field = fieldOf(['RRRAARRR', 'RRRAARRR', 'RRBBBBRR', 'RRBBBBRR', 'RRRRRRRR']);
const worked = new Set(['A', 'B']);

describe('the way from the gate', () => {
  it('goes around on the apron and over what is lost, before it crosses live turf', () => {
    const ways = waysFrom([-10, 0], field, 5, worked);
    expect(ways.get('A')).toEqual([]);
    expect(ways.get('B')).toEqual(['A']);
    expect(ways.get('R')).toEqual([]);
  });

  it('crosses the turf straight away where nobody can drive around it', () => {
    const ways = waysFrom([-10, 0], field, 1, worked);
    expect(ways.get('B')).toEqual(['R']);
    expect(ways.get('A')).toEqual(['B', 'R']);
  });

  it('names every live zone on it', () => {
    const inner = fieldOf(['RRRRRR', 'RSSSSR', 'RSCCSR', 'RSSSSR', 'RRRRRR']);
    expect(waysFrom([0, -8], inner, 5, new Set(['C'])).get('C')).toEqual(['R', 'S']);
  });
});

describe('halves', () => {
  const letters = ['A', 'B'].map((letter) => ({ own: letter, letter }));
  const venue = (rules: Partial<typeof smallVenue.rules>) => ({
    field: smallVenue.field,
    rules: { ...smallVenue.rules, ...rules },
  });

  it('are none where the venue works on the whole field', () => {
    expect(halvesOf(venue({ gateAt: [0, 20] }), field, letters)).toEqual([]);
  });

  it('begin with the one away from the gate', () => {
    expect(halvesOf(venue({ halves: 'sides', gateAt: [0, 20] }), field, letters)).toEqual([{ before: ['B'], after: ['A'] }]);
    expect(halvesOf(venue({ halves: 'sides', gateAt: [0, -20] }), field, letters)).toEqual([{ before: ['A'], after: ['B'] }]);
  });

  it('follow the ends of the longer axis, and are none where all zones lie in one', () => {
    expect(halvesOf(venue({ halves: 'ends', gateAt: [20, 0] }), field, letters)).toEqual([]);
    const ends = fieldOf(['AARRBB', 'AARRBB']);
    expect(halvesOf(venue({ halves: 'ends', gateAt: [20, 0] }), ends, letters)).toEqual([{ before: ['A'], after: ['B'] }]);
  });
});
