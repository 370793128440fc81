import type { Covering } from '#shared/vocabulary/covering.ts';
import { ask } from '../transport/ask.ts';
import { floored } from './booking-shapes.ts';
import { change, deskNow } from './desk.ts';

/** m: what is thicker is dirt or a deck, not a floor to choose. */
const thickestFloor = 0.12;

/** Floors that people may stand on: panels, tiles and the mesh. Sheets, decks and dirt are not a choice of floor. */
export const floorsOf = (coverings: readonly Covering[]): readonly Covering[] =>
  coverings.filter(
    (covering) =>
      covering.thickness <= thickestFloor && (['beam', 'plate'].includes(covering.spread) || covering.id === 'walk-mesh'),
  );

/** Foresees the booking with each of some floors on its floor zones, the same season for all. */
export const compareFloors = async (floors: readonly Covering[]): Promise<void> => {
  const { venue, booking, homeId } = deskNow();
  if (!venue || !booking || !homeId) return;
  change({ trials: floors.map((covering) => ({ covering, forecast: null, failure: null })) });
  for (const covering of floors) {
    const answer = await ask('forecast/preview', {
      venueId: venue.id,
      fixtureId: homeId,
      booking: floored(booking, covering.id),
      cellSize: 4,
    });
    const now = deskNow();
    if (now.booking !== booking || now.homeId !== homeId || !now.trials.some((trial) => trial.covering === covering)) return;
    change({
      trials: now.trials.map((trial) =>
        trial.covering !== covering
          ? trial
          : { covering, forecast: answer.ok ? answer.value : null, failure: answer.ok ? null : answer.failure },
      ),
    });
  }
};
