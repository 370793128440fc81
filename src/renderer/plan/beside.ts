import type { Booking } from '#shared/vocabulary/booking.ts';
import { isChanged, type Desk } from '../desk/desk.ts';
import { deskNow } from '../desk/desk.ts';
import { ask } from '../transport/ask.ts';
import { draftingNow, draw } from './drafting.ts';

/** Another way to do the event that can be laid beside the one on the sheet. */
export interface OtherWay {
  readonly name: string;
  readonly words: string;
  readonly booking: Booking;
}

/** What there is to lay beside: as it is stored, as it was before the last edit, and each way to the same home date that was compared. */
export const otherWays = (desk: Desk): readonly OtherWay[] => {
  const { booking, stored, before, trials } = desk;
  if (!booking) return [];
  const last = before.findLast((edited) => edited.booking !== null && edited.booking !== booking)?.booking;
  return [
    ...(stored && isChanged(desk) ? [{ name: 'stored', words: 'as it is stored', booking: stored }] : []),
    ...(last ? [{ name: 'before', words: 'before the last change', booking: last }] : []),
    ...trials
      .filter(({ way }) => way.fixtureId === desk.homeId)
      .map(({ way }) => ({ name: `compared ${way.name}`, words: way.name, booking: way.booking })),
  ];
};

/** Foresees another way in the same usual season and lays it beside. */
export const layBeside = async ({ booking, words }: OtherWay): Promise<void> => {
  const { venue, homeId } = deskNow();
  if (!venue || !homeId) return;
  const answer = await ask('forecast/preview', { venueId: venue.id, fixtureId: homeId, booking, cellSize: 2 });
  if (!answer.ok) return draw({ said: `${words}: ${answer.failure.message}`, beside: null });
  if (deskNow().homeId !== homeId) return;
  const { beside } = draftingNow();
  draw({ beside: { words, booking, forecast: answer.value, way: beside?.way ?? 'slider', share: beside?.share ?? 0.5 } });
};
