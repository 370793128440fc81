import { useState } from 'react';
import { showMoney, show as inUnits, figure } from '#shared/units/quantity.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { verdictMarks } from '#shared/wording/words.ts';
import { percent } from '../components/numbers.ts';
import { compareFloors, floorsOf } from '../desk/comparing.ts';
import { floored, floorZones } from '../desk/booking-shapes.ts';
import { useDesk } from '../desk/desk.ts';
import { edit } from '../desk/editing.ts';
import { boundsOf, pathOf } from '../drawings/frame.ts';
import { cellPaths } from '../drawings/turf-cells.ts';

/** Live cover on the home date over the zones whose floor is chosen, weighted by their turf, and the worst of them. */
const outcomeOf = (forecast: Forecast, letters: ReadonlySet<string>) => {
  const zones = forecast.zones.filter((zone) => letters.has(zone.letter));
  const area = zones.reduce((sum, zone) => sum + zone.area, 0);
  const worst = zones.toSorted((a, b) => a.coverHome.p50 - b.coverHome.p50)[0];
  return {
    area,
    cover: zones.reduce((sum, zone) => sum + zone.coverHome.p50 * zone.area, 0) / Math.max(1, area),
    after: zones.reduce((sum, zone) => sum + zone.coverAfter.p50 * zone.area, 0) / Math.max(1, area),
    worst: worst ? `${worst.letter} ${percent(worst.coverHome.p50)}` : '–',
    words: zones.map((zone) => `${zone.letter} ${verdictMarks[zone.verdict]}`).join(', '),
  };
};

/** Floors side by side: the same usual season for all; price, lay hours, trucks and what is left of the turf. */
export const Compare = () => {
  const { venue, booking, trials, units, coverings } = useDesk();
  const floors = floorsOf(coverings);
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  if (!booking || !venue)
    return (
      <section aria-labelledby="compare">
        <h2 id="compare">Compare</h2>
        <p className="empty">Open or begin a booking first: its floors are compared here.</p>
      </section>
    );
  const letters = floorZones(booking);
  const chosen = floors.filter((floor) => !left.has(floor.id));
  const current = new Set(booking.layers.filter((layer) => letters.has(layer.zone)).map((layer) => layer.covering));
  const toggle = (id: string): void => {
    const next = new Set(left);
    if (!next.delete(id)) next.add(id);
    setLeft(next);
  };
  return (
    <section aria-labelledby="compare">
      <h2 id="compare">Compare</h2>
      {letters.size === 0 ? (
        <p className="empty">
          This booking has no zone with people on it (seating, standing, pit, catering), so there is no floor to choose.
        </p>
      ) : (
        <p>
          Each floor on zones {[...letters].join(', ')}, all hours as booked; the other zones keep theirs. The same usual season
          for all, nothing done until the home date.
        </p>
      )}
      <fieldset className="floors">
        <legend>Floors to lay side by side</legend>
        {floors.map((floor) => (
          <label key={floor.id}>
            <input type="checkbox" checked={!left.has(floor.id)} onChange={() => toggle(floor.id)} />
            {floor.name}
            {current.has(floor.id) && ' (booked)'}
          </label>
        ))}
      </fieldset>
      <button
        type="button"
        className="main"
        disabled={chosen.length === 0 || letters.size === 0}
        onClick={() => void compareFloors(chosen)}
      >
        Compare {chosen.length} {chosen.length === 1 ? 'floor' : 'floors'}
      </button>
      {trials.length > 0 && (
        <>
          <div className="scroll">
            <table className="trials">
              <caption>
                On the home date, nothing done. Lay hours and trucks from the class of floor, hire where a quotation is entered.
              </caption>
              <thead>
                <tr>
                  <th scope="col">Floor</th>
                  <th scope="col">Floor up</th>
                  <th scope="col">Home date</th>
                  <th scope="col">Worst zone</th>
                  <th scope="col">Not ready, whole field</th>
                  <th scope="col">Trucks</th>
                  <th scope="col">Lay, people-h</th>
                  <th scope="col">Hire</th>
                  <th scope="col">
                    <span className="for-readers">Choose</span>
                  </th>
                </tr>
              </thead>
              <tbody>
                {trials.map(({ covering, forecast, failure }) => {
                  const outcome = forecast && outcomeOf(forecast, letters);
                  const taken = current.size === 1 && current.has(covering.id);
                  return (
                    <tr key={covering.id} className={taken ? 'chosen' : ''}>
                      <th scope="row">{covering.name}</th>
                      {outcome && forecast ? (
                        <>
                          <td>{percent(outcome.after)}</td>
                          <td>{percent(outcome.cover)}</td>
                          <td>{outcome.worst}</td>
                          <td>{inUnits(forecast.replaceArea.p50, 'area', units)}</td>
                          <td>{Math.ceil(outcome.area / covering.perTruck)}</td>
                          <td>{figure(outcome.area / covering.layingRate, 0)}</td>
                          <td>{hire(covering, outcome.area, venue)}</td>
                        </>
                      ) : (
                        <td colSpan={7}>{failure ? failure.message : '…'}</td>
                      )}
                      <td>
                        <button
                          type="button"
                          disabled={taken}
                          onClick={() => edit(floored(booking, covering.id))}
                          aria-label={`Take ${covering.name}`}
                        >
                          {taken ? 'booked' : 'take this one'}
                        </button>
                      </td>
                    </tr>
                  );
                })}
              </tbody>
            </table>
          </div>
          <ul className="small-maps">
            {trials.map(({ covering, forecast }) =>
              forecast ? (
                <li key={covering.id}>
                  <SmallMap venue={venue} booking={booking} forecast={forecast} name={covering.name} />
                  <p>
                    <strong>{covering.name}</strong>
                    <br />
                    {outcomeOf(forecast, letters).words}
                  </p>
                </li>
              ) : null,
            )}
          </ul>
        </>
      )}
      <p className="caution">
        Whether a floor carries what is planned on it is for its supplier’s sheet and the responsible engineer. Classes of floor
        are described with their standing; your own supplier’s figures go in their place.
      </p>
    </section>
  );
};

const hire = (covering: Covering, area: number, venue: Venue): string =>
  covering.hirePrice === null ? 'no price' : showMoney(covering.hirePrice * area * 100, venue.rules.currency);

/** The field small, with cover on the home date and the outlines of the event. */
const SmallMap = ({ venue, booking, forecast, name }: { venue: Venue; booking: Booking; forecast: Forecast; name: string }) => {
  const bounds = boundsOf([venue.field.outline, ...booking.zones.map((zone) => zone.outline)]);
  return (
    <svg
      className="small-map"
      viewBox={`${bounds.x - 1} ${-(bounds.y + bounds.height) - 1} ${bounds.width + 2} ${bounds.height + 2}`}
      role="img"
      aria-label={`The field on the home date under ${name}; the table holds the figures.`}
    >
      {cellPaths(forecast, 'home', 0).map(({ colour, path }) => (
        <path key={colour} d={path} fill={colour} />
      ))}
      {booking.zones.map((zone) => (
        <path key={zone.letter} d={pathOf([zone.outline])} className="event-zone" fill="none" />
      ))}
      <path d={pathOf([venue.field.outline])} className="edge" />
    </svg>
  );
};
