import { dayWords } from '#shared/wording/moments.ts';
import { loadingWords } from '#shared/wording/words.ts';
import { Choice, TimeField } from '../components/fields.tsx';
import { moved, spanOf, stretched, withLayer, zoneStretched } from '../desk/booking-shapes.ts';
import { isChanged, useDesk } from '../desk/desk.ts';
import { edit, redo, save, undo } from '../desk/editing.ts';

/** Dates of the booking, and every layer of the chosen zone: change one and the figures move. */
export const DatesAndFloors = () => {
  const desk = useDesk();
  const { booking, coverings, zone, before, after } = desk;
  if (!booking) return null;
  const span = spanOf(booking);
  const own = booking.zones.find((one) => one.letter === zone);
  const layers = booking.layers.map((layer, index) => ({ layer, index })).filter(({ layer }) => layer.zone === zone);
  const floors = coverings.map((covering) => [covering.id, covering.name] as const);
  return (
    <section className="dates" aria-labelledby="dates">
      <h3 id="dates">Change it and see</h3>
      {span && (
        <div className="row tight" role="group" aria-label="Dates of the whole booking">
          <span className="whole">
            Booking {dayWords(span.first.slice(0, 10))} to {dayWords(span.last.slice(0, 10))}
          </span>
          <button type="button" onClick={() => edit(moved(booking, -1))}>
            a day earlier
          </button>
          <button type="button" onClick={() => edit(moved(booking, 1))}>
            a day later
          </button>
          <button type="button" onClick={() => edit(stretched(booking, -1))}>
            out a day sooner
          </button>
          <button type="button" onClick={() => edit(stretched(booking, 1))}>
            out a day later
          </button>
        </div>
      )}
      {own && layers.length === 0 && <p className="empty">Nothing lies on {own.name}. Add a row to the schedule under book.</p>}
      {own &&
        layers.map(({ layer, index }) => (
          <fieldset key={index} className="layer-fields">
            <legend>
              {own.letter}, {loadingWords[layer.loading]}
            </legend>
            <Choice
              label={`Floor of ${own.letter}, layer ${index + 1}`}
              value={layer.covering}
              words={floors}
              change={(covering) => edit(withLayer(booking, index, { covering }))}
            />
            <label>
              on{' '}
              <TimeField label={`${own.letter} on`} value={layer.on} change={(on) => edit(withLayer(booking, index, { on }))} />
            </label>
            <label>
              off{' '}
              <TimeField
                label={`${own.letter} off`}
                value={layer.off}
                change={(off) => edit(withLayer(booking, index, { off }))}
              />
            </label>
          </fieldset>
        ))}
      {own && layers.length > 0 && (
        <div className="row">
          <button type="button" onClick={() => edit(zoneStretched(booking, own.letter, 1))}>
            {own.letter} off a day later
          </button>
          <button type="button" onClick={() => edit(zoneStretched(booking, own.letter, -1))}>
            {own.letter} off a day sooner
          </button>
        </div>
      )}
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
    </section>
  );
};
