import { addDays, dateOf, daysBetween } from '#shared/calendar/local-time.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import { LocalDate } from '#shared/vocabulary/primitives.ts';
import { dayWords } from '#shared/wording/moments.ts';
import { Part, RemoveButton } from '../../components/fields.tsx';
import { homeDates, moved, spanOf } from '../../desk/booking-shapes.ts';
import { datesAsked, nextDate } from '../../desk/comparing.ts';
import { show, useDesk } from '../../desk/desk.ts';
import { edit } from '../../desk/editing.ts';

/** Days between the end of the event and the home date after it; null where none follows. */
const clearDays = (booking: Booking, homes: readonly { readonly start: string }[]): number | null => {
  const last = spanOf(booking)?.last;
  const home = last && homes.find((one) => one.start > last);
  return home ? daysBetween(dateOf(last), dateOf(home.start)) : null;
};

/** The days an event is asked for in one enquiry, best liked first; each can become the day of the booking. */
export const OtherDates = ({ booking }: { booking: Booking }) => {
  const { fixtures } = useDesk();
  const dates = datesAsked(booking);
  const [own] = dates;
  if (!own) return null;
  const homes = homeDates(fixtures);
  const others = dates.slice(1);
  const set = (otherDates: readonly string[]): void => edit({ ...booking, otherDates });
  return (
    <Part title="Dates asked for">
      <table className="schedule">
        <caption>All in one enquiry. Compare lays them side by side; taking one moves the whole schedule.</caption>
        <thead>
          <tr>
            <th scope="col">First day</th>
            <th scope="col">Last off</th>
            <th scope="col">Clear days before the next home date</th>
            <th scope="col">
              <span className="for-readers">Take or remove</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {dates.map((date, at) => {
            const there = moved(booking, daysBetween(own, date));
            const clear = clearDays(there, homes);
            return (
              <tr key={date} className={at === 0 ? 'chosen' : ''}>
                <td>
                  {at === 0 ? (
                    `${dayWords(date)} (booked)`
                  ) : (
                    <input
                      type="date"
                      aria-label={`Other first day ${at}`}
                      value={date}
                      onChange={({ target }) =>
                        LocalDate.safeParse(target.value).success &&
                        !dates.includes(target.value) &&
                        set(others.map((one) => (one === date ? target.value : one)))
                      }
                    />
                  )}
                </td>
                <td>{dayWords(addDays(date, daysBetween(own, dateOf(spanOf(booking)!.last))))}</td>
                <td>{clear === null ? 'no home date follows' : clear}</td>
                <td className="row">
                  {at > 0 && (
                    <>
                      <button
                        type="button"
                        onClick={() => edit({ ...there, otherDates: dates.filter((one) => one !== date) })}
                        aria-label={`Book ${dayWords(date)} instead`}
                      >
                        book this one
                      </button>
                      <RemoveButton label={`Remove ${dayWords(date)}`} remove={() => set(others.filter((one) => one !== date))} />
                    </>
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <div className="row">
        <button
          type="button"
          disabled={others.length >= 11}
          onClick={() => {
            const next = nextDate(booking);
            if (next) set([...others, next]);
          }}
        >
          Add a date
        </button>
        {others.length > 0 && (
          <button type="button" onClick={() => show({ verb: 'compare' })}>
            Compare the dates
          </button>
        )}
      </div>
    </Part>
  );
};
