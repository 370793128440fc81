import { Covering } from '#shared/vocabulary/covering.ts';
import { Vehicle } from '#shared/vocabulary/vehicle.ts';
import { bookingsIn } from '#store/bookings.ts';
import { classesIn } from '#store/classes.ts';
import { documentReader } from '#store/documents.ts';
import { draftsIn } from '#store/drafts.ts';
import { fixturesIn } from '#store/fixtures.ts';
import { inspectionsIn } from '#store/inspections.ts';
import { learningIn } from '#store/learning.ts';
import { moneyIn } from '#store/money.ts';
import { photographsIn } from '#store/photographs.ts';
import type { Work } from '#store/revisions.ts';
import { plansIn } from '#store/plans.ts';
import { runsIn } from '#store/runs.ts';
import type { Contents } from '#store/store.ts';
import { venuesIn } from '#store/venues.ts';
import { weatherIn } from '#store/weather.ts';

const coveringOf = documentReader(Covering);
const vehicleOf = documentReader(Vehicle);

/** Everything in the workspace as one transaction sees it. */
export const contentsIn = (work: Work): Contents => ({
  venues: venuesIn(work),
  coverings: classesIn(work, 'coverings', coveringOf),
  vehicles: classesIn(work, 'vehicles', vehicleOf),
  fixtures: fixturesIn(work),
  bookings: bookingsIn(work),
  drafts: draftsIn(work),
  runs: runsIn(work),
  plans: plansIn(work),
  weather: weatherIn(work),
  money: moneyIn(work),
  inspections: inspectionsIn(work),
  photographs: photographsIn(work),
  learning: learningIn(work),
});
