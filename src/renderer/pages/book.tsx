import { useState } from 'react';
import { bookingStages, loadings, type Layer } from '#shared/vocabulary/booking.ts';
import { eventWords, loadingWords, stageWords, zoneUseWords } from '#shared/wording/words.ts';
import { changeLayer, edit, isChanged, moved, openBooking, redo, save, stretched, undo, useDesk } from '../sheet/desk.ts';

/** The production schedule: what lies where from when to when, with the floor of each row. */
export const Book = () => {
  const desk = useDesk();
  const { booking, bookings, coverings, before, after } = desk;
  return (
    <section aria-labelledby="book">
      <h2 id="book">Book</h2>
      <label>
        Booking{' '}
        <select value={booking?.id ?? ''} onChange={(event) => void openBooking(event.target.value)}>
          {bookings.map((line) => (
            <option key={line.id} value={line.id}>
              {line.name} ({stageWords[line.stage]})
            </option>
          ))}
        </select>
      </label>
      {booking && (
        <>
          <div className="row">
            <label>
              Stage{' '}
              <select
                value={booking.stage}
                onChange={(event) => edit({ ...booking, stage: event.target.value as typeof booking.stage })}
              >
                {bookingStages.map((stage) => (
                  <option key={stage} value={stage}>
                    {stageWords[stage]}
                  </option>
                ))}
              </select>
            </label>
            <span>{eventWords[booking.kind]}</span>
          </div>
          <div className="row" role="group" aria-label="Dates of the whole booking">
            <button type="button" onClick={() => edit(moved(booking, -1))}>
              a day earlier
            </button>
            <button type="button" onClick={() => edit(moved(booking, 1))}>
              a day later
            </button>
            <button type="button" onClick={() => edit(stretched(booking, 1))}>
              out a day later
            </button>
            <button type="button" onClick={() => edit(stretched(booking, -1))}>
              out a day sooner
            </button>
          </div>
          <div className="scroll">
            <table className="schedule">
              <caption>Production schedule, venue time</caption>
              <thead>
                <tr>
                  <th scope="col">Zone</th>
                  <th scope="col">Floor</th>
                  <th scope="col">On it</th>
                  <th scope="col">On</th>
                  <th scope="col">Off</th>
                </tr>
              </thead>
              <tbody>
                {booking.layers.map((layer, index) => {
                  const zone = booking.zones.find((one) => one.letter === layer.zone);
                  const named = `${layer.zone} ${zone?.name ?? ''}`;
                  return (
                    <tr key={index}>
                      <th scope="row" title={zone ? zoneUseWords[zone.use] : undefined}>
                        {named}
                      </th>
                      <td>
                        <select
                          aria-label={`Floor of ${named}`}
                          value={layer.covering}
                          onChange={(event) => changeLayer(index, { covering: event.target.value })}
                        >
                          {coverings.map((covering) => (
                            <option key={covering.id} value={covering.id}>
                              {covering.name}
                            </option>
                          ))}
                        </select>
                      </td>
                      <td>
                        <select
                          aria-label={`What stands on ${named}`}
                          value={layer.loading}
                          onChange={(event) => changeLayer(index, { loading: event.target.value as Layer['loading'] })}
                        >
                          {loadings.map((loading) => (
                            <option key={loading} value={loading}>
                              {loadingWords[loading]}
                            </option>
                          ))}
                        </select>
                      </td>
                      <td>
                        <TimeField label={`${named} on`} value={layer.on} change={(on) => changeLayer(index, { on })} />
                      </td>
                      <td>
                        <TimeField label={`${named} off`} value={layer.off} change={(off) => changeLayer(index, { off })} />
                      </td>
                    </tr>
                  );
                })}
              </tbody>
            </table>
          </div>
          <div className="row">
            <button type="button" disabled={before.length === 0} onClick={undo}>
              Undo
            </button>
            <button type="button" disabled={after.length === 0} onClick={redo}>
              Redo
            </button>
            <button type="button" className="main" disabled={!isChanged(desk)} onClick={() => void save()}>
              Store the booking
            </button>
          </div>
        </>
      )}
    </section>
  );
};

/** A wall-clock minute; what is half typed changes nothing. */
const TimeField = ({ label, value, change }: { label: string; value: string; change: (value: string) => void }) => {
  const [draft, setDraft] = useState<string | null>(null);
  return (
    <input
      type="datetime-local"
      aria-label={label}
      value={draft ?? value}
      onChange={(event) => {
        const typed = event.target.value.slice(0, 16);
        setDraft(typed);
        if (/^\d{4}-\d\d-\d\dT\d\d:\d\d$/.test(typed) && typed !== value) change(typed);
      }}
      onBlur={() => setDraft(null)}
    />
  );
};
