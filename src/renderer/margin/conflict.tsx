import { useDesk } from '../desk/desk.ts';
import { keepMine, takeTheirs } from '../desk/editing.ts';

/** Somebody else stored the booking meanwhile: both are named, the person chooses, nothing is lost. */
export const Conflict = () => {
  const { theirs, booking } = useDesk();
  if (!theirs || !booking) return null;
  const parts = [
    theirs.name !== booking.name && 'name',
    theirs.stage !== booking.stage && 'stage',
    JSON.stringify(theirs.layers) !== JSON.stringify(booking.layers) && 'schedule',
    JSON.stringify(theirs.zones) !== JSON.stringify(booking.zones) && 'zones',
    JSON.stringify(theirs.crowds) !== JSON.stringify(booking.crowds) && 'people',
    JSON.stringify(theirs.traffic) !== JSON.stringify(booking.traffic) && 'machines',
    JSON.stringify(theirs.incidents) !== JSON.stringify(booking.incidents) && 'incidents',
    JSON.stringify(theirs.intake) !== JSON.stringify(booking.intake) && 'intake',
    JSON.stringify(theirs.otherDates) !== JSON.stringify(booking.otherDates) && 'dates asked for',
    theirs.note !== booking.note && 'note',
  ].filter((part) => part !== false);
  return (
    <div className="trouble" role="alert">
      <strong>Revision {theirs.revision} was stored while you worked.</strong>
      <p>{parts.length > 0 ? `It differs from yours in: ${parts.join(', ')}.` : 'It says the same as yours.'}</p>
      <div className="row">
        <button type="button" onClick={() => void keepMine()}>
          Store mine over it
        </button>
        <button type="button" onClick={takeTheirs}>
          Take that one
        </button>
      </div>
    </div>
  );
};
