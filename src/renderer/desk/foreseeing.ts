import { ask, work } from '../transport/ask.ts';
import { change, deskNow, isChanged, nothingKept, valueOf } from './desk.ts';
import { save } from './editing.ts';

/** Draws members and keeps the run. The booking is stored first: a kept run speaks of what is in the file. */
export const foresee = async (members: number): Promise<boolean> => {
  if (isChanged(deskNow()) && !(await save())) return false;
  const { venue, booking, homeId } = deskNow();
  if (!venue || !booking || !homeId) return false;
  change({ failure: null, said: '' });
  const answer = await work(
    'forecast/run',
    { venueId: venue.id, fixtureId: homeId, bookingId: booking.id, members, seed: 1 },
    (job) => change({ job }),
  );
  change({ job: null });
  const run = valueOf(answer);
  if (!run) return false;
  if (isChanged(deskNow()) || deskNow().booking?.id !== booking.id || deskNow().homeId !== homeId) return false;
  change({ ...nothingKept, run, said: `${run.result.members} members drawn and kept as ${run.id.slice(0, 12)}.` });
  return true;
};

export const stopWork = (): void => {
  const { job } = deskNow();
  if (job) void ask('job/cancel', { id: job.id });
};
