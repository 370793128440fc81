import { describe, expect, test } from 'vitest';
import { Booking, UnfinishedBooking } from '#shared/vocabulary/booking.ts';
import sample from '../../resources/sample/sample-venue.json' with { type: 'json' };

const concert = Booking.parse(sample.bookings.find((booking) => booking.id === 'july-concert'));
const problems = (written: unknown): readonly string[] =>
  UnfinishedBooking.safeParse(written).error?.issues.map(({ path, message }) => `${path.join('.')} ${message}`) ?? [];

describe('a booking as it is being changed', () => {
  test('is the booking itself where nothing is open', () => expect(UnfinishedBooking.parse(concert)).toEqual(concert));

  test.each<[string, object]>([
    ['an off before its on', { layers: [{ ...concert.layers[0]!, off: '1999-01-01T00:00' }] }],
    ['people who leave before they come', { crowds: [{ ...concert.crowds[0]!, until: '1999-01-01T00:00' }] }],
    ['more people than stand on a square metre', { crowds: [{ ...concert.crowds[0]!, density: 60 }] }],
    ['no name yet', { name: '' }],
  ])('may have %s, which a stored one may not', (_, changed) => {
    const half = { ...concert, ...changed };
    expect(UnfinishedBooking.parse(half)).toEqual(half);
    expect(Booking.safeParse(half).success).toBe(false);
  });

  test('of an earlier version has no incidents', () => {
    const { incidents: _, ...earlier } = { ...concert, name: '' };
    expect(UnfinishedBooking.parse(earlier).incidents).toEqual([]);
  });

  test.each<[string, object, readonly string[]]>([
    ['text for a list', { layers: 'none' }, ['layers must be a list']],
    ['a field nobody knows', { colour: 'red' }, ['colour is not known here']],
    [
      'an hour that is none',
      { layers: [{ ...concert.layers[0]!, on: 'noon' }] },
      ['layers.0.on must be a day and time written YYYY-MM-DDTHH:MM'],
    ],
    [
      'a kind nobody knows',
      { layers: [{ ...concert.layers[0]!, loading: 'straw' }] },
      ['layers.0.loading must be one of "open", "chairs", "stage", "deck", "plant", "ice", "fill"'],
    ],
    [
      'a wrong shape beside an open contradiction',
      { name: '', kind: 3 },
      ['kind must be one of "concert", "concert-in-the-round", "festival", "rink", "dirt-show", "ceremony", "other"'],
    ],
  ])('may not have %s', (_, changed, said) => expect(problems({ ...concert, ...changed })).toEqual(said));

  test('has a key', () =>
    expect(problems({ ...concert, id: 'Ä' })).toEqual(['id must be 1 to 64 lower-case letters, digits or hyphens']));
});
