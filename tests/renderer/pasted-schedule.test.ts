import { describe, expect, test } from 'vitest';
import { startingCoverings } from '#shared/parameters/coverings.ts';
import { Booking } from '#shared/vocabulary/booking.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';
import { momentOf, pastedSchedule, withSchedule } from '../../src/renderer/desk/pasted-schedule.ts';
import sample from '../../resources/sample/sample-venue.json' with { type: 'json' };

const concert = Booking.parse(sample.bookings.find((booking) => booking.id === 'july-concert'));
const classes = startingCoverings as readonly Covering[];

describe('moments as spreadsheets write them', () => {
  test.each([
    ['2027-07-12 10:00', true, '2027-07-12T10:00'],
    ['2027-07-12T10:00', true, '2027-07-12T10:00'],
    ['2027-7-2 9:05', true, '2027-07-02T09:05'],
    ['7/12/2027 10:00 PM', true, '2027-07-12T22:00'],
    ['12/7/2027 10:00', false, '2027-07-12T10:00'],
    ['7/12/2027 12:30 AM', true, '2027-07-12T00:30'],
    ['12.7.2027 22:00', true, '2027-07-12T22:00'],
    ['2027-02-29 10:00', true, null],
    ['2027-07-12 24:10', true, null],
    ['tomorrow', true, null],
    ['', true, null],
  ])('%s (month first: %s) is %s', (typed, monthFirst, moment) => expect(momentOf(typed, monthFirst)).toBe(moment));
});

describe('rows of a spreadsheet', () => {
  test('are read by letter or name, by key or name of the floor, with or without headings', () => {
    const { layers, problems } = pastedSchedule(
      [
        'Zone\tFloor\tOn\tOff\tStands on it',
        'A\tAluminium roadway panel\t2027-07-11 10:00\t2027-07-20 20:00\tstage',
        'seated floor\topaque-tile\t2027-07-16 05:00\t2027-07-18 12:00\tchairs',
        '',
        'D Photo pit\tsolid\t2027-07-15 19:00\t2027-07-18 12:00',
      ].join('\n'),
      concert,
      classes,
      true,
    );
    expect(problems).toEqual([]);
    expect(layers.map(({ zone, covering, on, loading }) => [zone, covering, on, loading])).toEqual([
      ['A', 'aluminium-panel', '2027-07-11T10:00', 'stage'],
      ['H', 'opaque-tile', '2027-07-16T05:00', 'chairs'],
      ['D', 'solid-panel', '2027-07-15T19:00', 'open'],
    ]);
    expect(layers[0]!.legs).toEqual(concert.layers[0]!.legs);
  });

  test('that cannot be read are named with their line and why', () => {
    const { layers, problems } = pastedSchedule(
      [
        'Q\tsolid-panel\t2027-07-11 10:00\t2027-07-20 20:00',
        'A\tcarpet of gold\t2027-07-11 10:00\t2027-07-20 20:00',
        'A\tsolid-panel\tsoon\t2027-07-20 20:00',
        'A\tsolid-panel\t2027-07-20 20:00\t2027-07-11 10:00',
        'A\tsolid-panel\t2027-07-11 10:00\t2027-07-20 20:00\telephants',
      ].join('\r\n'),
      concert,
      classes,
      true,
    );
    expect(layers).toEqual([]);
    expect(problems.map(({ line }) => line)).toEqual([1, 2, 3, 4, 5]);
    expect(problems[0]!.reason).toContain('no zone is called "Q"');
    expect(problems[3]!.reason).toContain('comes off before it goes on');
  });

  test('take the place of the rows of their zones; other zones keep theirs', () => {
    const read = pastedSchedule('H\topaque-tile\t2027-07-16 05:00\t2027-07-18 12:00', concert, classes, true);
    const changed = withSchedule(concert, read);
    expect(changed.layers.filter((layer) => layer.zone === 'H')).toHaveLength(1);
    expect(changed.layers.filter((layer) => layer.zone !== 'H')).toEqual(concert.layers.filter((layer) => layer.zone !== 'H'));
    expect(Booking.safeParse(changed).success).toBe(true);
  });
});
