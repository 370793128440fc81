import { momentWords } from '../desk/moments.ts';
import { stageWords } from '#shared/wording/words.ts';
import { isChanged, useDesk } from '../desk/desk.ts';

/** Like the block in the corner of a drawing: what this sheet shows and how far it can be leaned on. */
export const TitleBlock = () => {
  const desk = useDesk();
  const { venue, booking, run, preview, draft } = desk;
  const kept = run && !draft;
  return (
    <dl className="title-block">
      <div>
        <dt>Venue</dt>
        <dd>{venue?.name ?? '–'}</dd>
      </div>
      <div>
        <dt>Booking</dt>
        <dd>
          {booking ? `${booking.name}, ${stageWords[booking.stage]}` : '–'}
          {isChanged(desk) && <strong> (changed, not stored)</strong>}
        </dd>
      </div>
      <div>
        <dt>Run</dt>
        <dd>{kept ? `${run.id.slice(0, 12)}, ${run.result.members} members` : preview ? 'usual season, not kept' : '–'}</dd>
      </div>
      <div>
        <dt>Made</dt>
        <dd>{kept ? `${momentWords(run.createdAt.slice(0, 16))} UTC` : '–'}</dd>
      </div>
      <div className="wide">
        <dt>Standing</dt>
        <dd>A forecast of turf. Readiness is decided by measured tests and the competition’s own rules.</dd>
      </div>
    </dl>
  );
};
