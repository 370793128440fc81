import { useId, useState, type FormEvent } from 'react';
import { eventKinds, type EventKind } from '#shared/vocabulary/booking.ts';
import { LocalDate } from '#shared/vocabulary/primitives.ts';
import { eventWords } from '#shared/wording/words.ts';
import { useDesk } from '../../desk/desk.ts';
import { presetBooking } from '../../desk/event-presets.ts';
import { openNew } from '../../desk/opening.ts';

/** Begins a booking from the usual zones and hours of its kind. */
export const NewBooking = () => {
  const { venue, bookings, fixtures } = useDesk();
  const [open, setOpen] = useState(false);
  const [kind, setKind] = useState<EventKind>('concert');
  const [name, setName] = useState('');
  const [day, setDay] = useState('');
  const id = useId();
  if (!venue) return null;
  const begin = (event: FormEvent): void => {
    event.preventDefault();
    if (!LocalDate.safeParse(day).success) return;
    const stem = `${kind}-${day}`;
    const taken = new Set(bookings.map((line) => line.id));
    let key = stem;
    for (let number = 2; taken.has(key); number++) key = `${stem}-${number}`;
    void openNew(presetBooking(kind, venue, day, name.trim() || eventWords[kind], key));
    setOpen(false);
    setName('');
  };
  if (!open)
    return (
      <button
        type="button"
        onClick={() => {
          setDay(fixtures.find((fixture) => fixture.kind === 'home-date')?.start.slice(0, 10) ?? '');
          setOpen(true);
        }}
      >
        New booking
      </button>
    );
  return (
    <form className="row new-booking" onSubmit={begin}>
      <label htmlFor={`${id}-kind`}>Kind</label>
      <select id={`${id}-kind`} autoFocus value={kind} onChange={(event) => setKind(event.target.value as EventKind)}>
        {eventKinds.map((one) => (
          <option key={one} value={one}>
            {eventWords[one]}
          </option>
        ))}
      </select>
      <label htmlFor={`${id}-name`}>Name</label>
      <input id={`${id}-name`} value={name} maxLength={120} onChange={(event) => setName(event.target.value)} />
      {/* A narrow window breaks the row between fields, not between a field and its name. */}
      <span className="row">
        <label htmlFor={`${id}-day`}>First show</label>
        <input id={`${id}-day`} type="date" required value={day} onChange={(event) => setDay(event.target.value)} />
      </span>
      <button type="submit" className="main">
        Lay it out
      </button>
      <button type="button" onClick={() => setOpen(false)}>
        Not now
      </button>
    </form>
  );
};
