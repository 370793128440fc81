import { eventKinds } from '#shared/vocabulary/booking.ts';
import { eventWords, stageWords } from '#shared/wording/words.ts';
import { Choice, Part, TextField } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';
import { edit } from '../../desk/editing.ts';
import { openBooking, removeBooking } from '../../desk/opening.ts';
import { ZoneTable } from '../../plan/zone-table.tsx';
import { Incidents } from './incidents.tsx';
import { IntakeQuestions } from './intake.tsx';
import { OtherDates } from './other-dates.tsx';
import { HomeDates } from './home-dates.tsx';
import { Machines } from './machines.tsx';
import { NewBooking } from './new-booking.tsx';
import { People } from './people.tsx';
import { Season } from './season.tsx';
import { Schedule } from './schedule.tsx';
import { Zones } from './zones.tsx';
import './book.css';

/** The booking as the production tells it: what lies where from when to when, who and what is on it. */
export const Book = () => {
  const { booking, bookings, stored } = useDesk();
  return (
    <section aria-labelledby="book">
      <h2 id="book">Book</h2>
      <div className="row">
        {bookings.length > 0 && (
          <label>
            Booking{' '}
            <select value={stored?.id ?? ''} onChange={(event) => void openBooking(event.target.value)}>
              {stored === null && <option value="">{booking?.name ?? 'choose'}</option>}
              {bookings.map((line) => (
                <option key={line.id} value={line.id}>
                  {line.name} ({stageWords[line.stage]})
                </option>
              ))}
            </select>
          </label>
        )}
        <NewBooking />
      </div>
      {booking ? (
        <>
          <div className="row">
            <label>
              Name <TextField label="Name of the booking" value={booking.name} change={(name) => edit({ ...booking, name })} />
            </label>
            <label>
              Kind{' '}
              <Choice
                label="Kind of event"
                value={booking.kind}
                words={eventKinds.map((kind) => [kind, eventWords[kind]] as const)}
                change={(kind) => edit({ ...booking, kind })}
              />
            </label>
            <label>
              Stage{' '}
              <Choice
                label="How far the booking has come"
                value={booking.stage}
                words={stageWords}
                change={(stage) => edit({ ...booking, stage })}
              />
            </label>
          </div>
          <label>
            Note
            <textarea
              rows={2}
              maxLength={4000}
              key={booking.note}
              defaultValue={booking.note}
              onBlur={({ target }) => target.value.trim() !== booking.note && edit({ ...booking, note: target.value.trim() })}
            />
          </label>
          <OtherDates booking={booking} />
          <Schedule booking={booking} />
          <Part title="The zones in figures">
            <div className="scroll">
              <ZoneTable />
            </div>
          </Part>
          <Zones booking={booking} />
          <People booking={booking} />
          <Machines booking={booking} />
          <Incidents booking={booking} />
          <IntakeQuestions booking={booking} key={booking.id} />
        </>
      ) : (
        <p className="empty">
          There is no booking yet. Choose a kind of event, name it and give its day: its usual zones and hours are laid out, to be
          corrected against the production schedule.
        </p>
      )}
      <HomeDates />
      <Season />
      {stored && (
        <details>
          <summary>Remove this booking</summary>
          <p>Its kept forecasts and plans stay in the file.</p>
          <button type="button" onClick={() => void removeBooking()}>
            Remove {stored.name}
          </button>
        </details>
      )}
    </section>
  );
};
