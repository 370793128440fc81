import type { ReplyOf } from '#shared/contract/contract.ts';
import type { Answer } from '#shared/contract/failure.ts';
import type { LocalTime } from '#shared/vocabulary/primitives.ts';
import { ask } from '../transport/ask.ts';
import { homeDates, nextHome, spanOf } from './booking-shapes.ts';
import { change, deskNow, drawnBooking, isChanged, nothingKept, valueOf } from './desk.ts';

/** ms without a further edit before the season is reckoned again. */
const pause = 40;

let waiting: ReturnType<typeof setTimeout> | undefined;
let asking = false;
let again = false;

/** Foresees the usual season of what is drawn, once edits pause. One question at a time; the newest is never left out. */
export const previewSoon = (): void => {
  clearTimeout(waiting);
  change({ previewing: true });
  waiting = setTimeout(() => void preview(), pause);
};

export const preview = async (): Promise<void> => {
  if (asking) {
    again = true;
    return;
  }
  const asked = deskNow();
  const booking = drawnBooking(asked);
  const { venue, homeId } = asked;
  if (!venue || !homeId) return change({ previewing: false });
  asking = true;
  change({ previewing: true });
  let answer: Answer<ReplyOf<'forecast/preview'>>;
  try {
    // Coarser cells while something is dragged: the answer must keep up with the hand.
    const cellSize = asked.draft ? 4 : 2;
    answer = await ask('forecast/preview', { venueId: venue.id, fixtureId: homeId, booking, cellSize });
  } finally {
    asking = false;
  }
  const now = deskNow();
  if (again || drawnBooking(now) !== booking || now.homeId !== homeId) {
    again = false;
    // Under a hand that keeps moving, the state a moment ago is shown rather than none until it rests.
    if (answer.ok && now.draft !== null && asked.draft !== null && now.homeId === homeId)
      change({ preview: answer.value, refused: null });
    void preview();
  } else if (answer.ok) change({ preview: answer.value, previewing: false, refused: null });
  else change({ previewing: false, refused: answer.failure });
};

/** The newest kept run of the booking as stored on the chosen home date, and the newest plan from it. */
export const findKept = async (): Promise<void> => {
  const { venue, stored, homeId } = deskNow();
  if (!venue || !stored || isChanged(deskNow())) return;
  const runs = await ask('forecast/list', { venueId: venue.id });
  const line = runs.ok ? runs.value.find((one) => one.bookingId === stored.id && one.fixtureId === homeId) : undefined;
  if (!line) return;
  const run = valueOf(await ask('forecast/read', { id: line.id }));
  const plans = await ask('plan/list', { venueId: venue.id });
  const planLine = plans.ok ? plans.value.find((one) => one.forecastId === line.id) : undefined;
  const plan = planLine ? valueOf(await ask('plan/read', { id: planLine.id })) : null;
  const now = deskNow();
  if (now.stored !== stored || now.homeId !== homeId || isChanged(now)) return;
  change({ run, plan });
  if (plan) await readEstimate(plan.id);
};

export const readEstimate = async (planId: string): Promise<void> => {
  const estimate = await ask('money/estimate', { planId });
  if (estimate.ok && deskNow().plan?.id === planId) change({ estimate: estimate.value });
};

export const chooseHome = (homeId: string): void => {
  change({ homeId, ...nothingKept, trials: [] });
  void preview();
  void findKept();
};

/** A booking that has moved past its home date counts against the next one. */
export const followHome = (): void => {
  const { booking, fixtures, homeId } = deskNow();
  const over = booking && spanOf(booking)?.last;
  const home = homeDates(fixtures).find((one) => one.id === homeId);
  const next = nextHome(booking, fixtures);
  if (over && home && next && home.start <= over && next.start > over) {
    change({ homeId: next.id, said: `Counts against ${next.name} now.` });
  }
};

let shadowWaiting: ReturnType<typeof setTimeout> | undefined;

/** Puts the cursor of the strip on an hour; the plan's shadow follows. */
export const pointAt = (cursor: LocalTime): void => {
  change({ cursor });
  clearTimeout(shadowWaiting);
  shadowWaiting = setTimeout(() => void drawShadow(), pause);
};

export const drawShadow = async (): Promise<void> => {
  const { venue, cursor } = deskNow();
  if (!venue || !cursor) return;
  const answer = await ask('light/shadow', { venueId: venue.id, at: cursor });
  if (answer.ok && deskNow().cursor === cursor) change({ shadow: answer.value });
};
