import { useState } from 'react';
import { unitOf } from '#shared/units/quantity.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import { dayWords } from '#shared/wording/moments.ts';
import { QuantityField } from '../../components/fields.tsx';
import {
  compareWays,
  datesAsked,
  floorsOf,
  membersOfWay,
  mostWays,
  waysOf,
  type Choices,
  type StagePlace,
} from '../../desk/comparing.ts';
import { floorZones } from '../../desk/booking-shapes.ts';
import { show, useDesk } from '../../desk/desk.ts';
import { Outcomes } from './outcomes.tsx';
import './compare.css';

/** Floors, dates and places of the stage side by side, the same seasons for all. */
export const Compare = () => {
  const { venue, booking, trials, fixtures } = useDesk();
  const home = fixtures.some((fixture) => fixture.kind === 'home-date');
  return (
    <section aria-labelledby="compare">
      <h2 id="compare">Compare</h2>
      {!booking || !venue ? (
        <p className="empty">
          Open or begin a booking first: its floors, dates and places of the stage are laid side by side here.{' '}
          <button type="button" onClick={() => show({ verb: 'book' })}>
            To the bookings
          </button>
        </p>
      ) : !home ? (
        <p className="empty">
          Ways are told apart by what the turf is on the next home date.{' '}
          <button type="button" onClick={() => show({ verb: 'book' })}>
            Enter a home date under book
          </button>
        </p>
      ) : (
        <>
          <ChooseWays booking={booking} key={booking.id} />
          {trials.length > 0 && <Outcomes booking={booking} venue={venue} trials={trials} />}
        </>
      )}
      <p className="caution">
        Whether a floor carries what is planned on it is for its supplier’s sheet and the responsible engineer. Classes of floor
        are described with their standing; your own supplier’s figures go in their place.
      </p>
    </section>
  );
};

/** What is laid side by side: ticks for floors, dates and places. */
const ChooseWays = ({ booking }: { booking: Booking }) => {
  const { coverings, job, units } = useDesk();
  const letters = floorZones(booking);
  const floors = letters.size === 0 ? [] : floorsOf(coverings);
  const current = new Set(booking.layers.filter((layer) => letters.has(layer.zone)).map((layer) => layer.covering));
  const dates = datesAsked(booking);
  const [without, setWithout] = useState<ReadonlySet<string>>(new Set(['turned', 'back']));
  const [back, setBack] = useState(5);
  const tick = (key: string) => (
    <input
      type="checkbox"
      checked={!without.has(key)}
      onChange={() => {
        const next = new Set(without);
        if (!next.delete(key)) next.add(key);
        setWithout(next);
      }}
    />
  );
  const kept = <Value extends string>(keys: readonly Value[]): readonly Value[] => keys.filter((key) => !without.has(key));
  const places: readonly StagePlace[] = [
    { kind: 'as-booked' },
    ...(without.has('turned') ? [] : [{ kind: 'turned' } as const]),
    ...(without.has('back') ? [] : [{ kind: 'back', by: back } as const]),
  ];
  const choices: Choices = {
    floors: letters.size === 0 ? [null] : kept(floors.map(({ id }) => id)),
    dates: kept(dates),
    places,
  };
  const count = waysOf(booking, choices).length;
  return (
    <>
      {letters.size === 0 ? (
        <p className="empty">
          This booking has no zone with people on it (seating, standing, pit, catering), so there is no floor to choose; dates and
          places are compared.
        </p>
      ) : (
        <fieldset className="floors">
          <legend>Floors for zones {[...letters].join(', ')}; the others keep theirs</legend>
          {floors.map((floor) => (
            <label key={floor.id}>
              {tick(floor.id)}
              {floor.name}
              {current.has(floor.id) && ' (booked)'}
            </label>
          ))}
        </fieldset>
      )}
      <fieldset className="floors">
        <legend>First days; others of the same enquiry are entered under book</legend>
        {dates.map((date, at) => (
          <label key={date}>
            {tick(date)}
            {dayWords(date)} {date.slice(0, 4)}
            {at === 0 && ' (booked)'}
          </label>
        ))}
      </fieldset>
      <fieldset className="floors">
        <legend>Places of the stage</legend>
        <label>
          <input type="checkbox" checked disabled /> as booked
        </label>
        <label>{tick('turned')} turned to the other end</label>
        <span className="row tight">
          <label>{tick('back')} set back by</label>
          <QuantityField
            label="Stage set back by"
            quantity="length"
            value={back}
            change={(by) => by > 0 && by < 60 && setBack(by)}
          />
          {unitOf('length', units)}
        </span>
      </fieldset>
      <div className="row">
        <button
          type="button"
          className="main"
          disabled={count === 0 || count > mostWays || job !== null}
          onClick={() => void compareWays(choices)}
        >
          Compare {count} {count === 1 ? 'way' : 'ways'}
        </button>
        <span>
          {count > mostWays
            ? `At most ${mostWays} at once: take some ticks away.`
            : `The same ${membersOfWay} seasons for all; the recovery is planned after each, a few seconds a way.`}
        </span>
      </div>
    </>
  );
};
