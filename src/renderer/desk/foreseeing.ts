import { ask, work } from '../transport/ask.ts';
import { oneAtATime } from '../transport/turns.ts';
import { change, deskNow, isChanged, nothingKept, valueOf } from './desk.ts';
import { save } from './editing.ts';

/** Members drawn when an answer is asked for before a forecast was kept. */
const membersForAnswers = 100;

/** Draws members and keeps the run. The booking is stored first: a kept run speaks of what is in the file. */
export const foresee = oneAtATime(async (members: number): Promise<boolean> => {
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
});

/** Asks the kept run what other days, hours and floors would change, and what reading would narrow it. */
export const askAnswers = oneAtATime(async (): Promise<void> => {
  if (!deskNow().run && !(await foresee(membersForAnswers))) return;
  const { run } = deskNow();
  if (!run) return;
  change({ failure: null, said: '' });
  const answer = await work('forecast/answers', { forecastId: run.id, trial: null }, (job) => change({ job }));
  change({ job: null });
  const answers = valueOf(answer);
  if (answers && deskNow().run === run) change({ answers });
});

export const stopWork = (): void => {
  const { job } = deskNow();
  if (job) void ask('job/cancel', { id: job.id });
};
