import type { OperationName } from '#shared/contract/contract.ts';
import type { Service } from '#services/needs.ts';
import { listBookings } from '#services/booking/list.ts';
import { readBooking } from '#services/booking/read.ts';
import { removeBooking } from '#services/booking/remove.ts';
import { saveBooking } from '#services/booking/save.ts';
import { dropDraft } from '#services/draft/drop.ts';
import { keepDraft } from '#services/draft/keep.ts';
import { listDrafts } from '#services/draft/list.ts';
import { readCatalogue } from '#services/catalogue/read.ts';
import { listCoverings } from '#services/covering/list.ts';
import { saveCovering } from '#services/covering/save.ts';
import { listFixtures } from '#services/fixture/list.ts';
import { removeFixture } from '#services/fixture/remove.ts';
import { saveFixture } from '#services/fixture/save.ts';
import { answerForecast } from '#services/forecast/answers.ts';
import { listForecasts } from '#services/forecast/list.ts';
import { previewForecast } from '#services/forecast/preview.ts';
import { readForecast } from '#services/forecast/read.ts';
import { runForecast } from '#services/forecast/run.ts';
import { addInspection } from '#services/inspection/add.ts';
import { listInspections } from '#services/inspection/list.ts';
import { readInspection } from '#services/inspection/read.ts';
import { acceptProposal } from '#services/learning/accept.ts';
import { assimilateInspections } from '#services/learning/assimilate.ts';
import { listLearning } from '#services/learning/list.ts';
import { proposeValues } from '#services/learning/propose.ts';
import { readAssimilation } from '#services/learning/read.ts';
import { refuseProposal } from '#services/learning/refuse.ts';
import { replayEvent } from '#services/learning/replay.ts';
import { climateUnderCoverings } from '#services/climate/day.ts';
import { lightOfMonth } from '#services/light/month.ts';
import { shadowOfHour } from '#services/light/shadow.ts';
import { enterActual } from '#services/money/enter-actual.ts';
import { makeEstimate } from '#services/money/make-estimate.ts';
import { readMoney } from '#services/money/read.ts';
import { setPrices } from '#services/money/set-prices.ts';
import { saveTerms } from '#services/money/terms.ts';
import { addPhotograph } from '#services/photograph/add.ts';
import { listPhotographs } from '#services/photograph/list.ts';
import { measurePhotograph } from '#services/photograph/measure.ts';
import { readPhotograph } from '#services/photograph/read.ts';
import { compareWays } from '#services/plan/compare.ts';
import { listPlans } from '#services/plan/list.ts';
import { makePlan } from '#services/plan/make.ts';
import { readPlan } from '#services/plan/read.ts';
import { recheckPlan } from '#services/plan/recheck.ts';
import { decideSod } from '#services/plan/sod.ts';
import { writeReport } from '#services/report/write.ts';
import { importWeather } from '#services/weather/import.ts';
import { readWeather } from '#services/weather/read.ts';
import { setWeatherDays } from '#services/weather/set-days.ts';
import { cancelJob } from '#services/job/cancel.ts';
import { readJob } from '#services/job/read.ts';
import { listVehicles } from '#services/vehicle/list.ts';
import { saveVehicle } from '#services/vehicle/save.ts';
import { exportVenue } from '#services/venue/export.ts';
import { importVenue } from '#services/venue/import.ts';
import { listVenues } from '#services/venue/list.ts';
import { readVenue } from '#services/venue/read.ts';
import { removeVenue } from '#services/venue/remove.ts';
import { saveVenue } from '#services/venue/save.ts';
import { aboutWorkspace } from '#services/workspace/about.ts';
import { compactWorkspace } from '#services/workspace/compact.ts';
import { listCopies } from '#services/workspace/copies.ts';
import { copyWorkspace } from '#services/workspace/copy.ts';
import { restoreWorkspace } from '#services/workspace/restore.ts';

/** Every operation and the service that answers it. One that is missing does not compile. */
export const operations: { readonly [Name in OperationName]: Service<Name> } = {
  'workspace/about': aboutWorkspace,
  'workspace/copies': listCopies,
  'workspace/copy': copyWorkspace,
  'workspace/compact': compactWorkspace,
  'workspace/restore': restoreWorkspace,
  'catalogue/read': readCatalogue,
  'venue/list': listVenues,
  'venue/read': readVenue,
  'venue/save': saveVenue,
  'venue/remove': removeVenue,
  'venue/export': exportVenue,
  'venue/import': importVenue,
  'covering/list': listCoverings,
  'covering/save': saveCovering,
  'vehicle/list': listVehicles,
  'vehicle/save': saveVehicle,
  'fixture/list': listFixtures,
  'fixture/save': saveFixture,
  'fixture/remove': removeFixture,
  'booking/list': listBookings,
  'booking/read': readBooking,
  'booking/save': saveBooking,
  'booking/remove': removeBooking,
  'draft/keep': keepDraft,
  'draft/list': listDrafts,
  'draft/drop': dropDraft,
  'forecast/run': runForecast,
  'forecast/preview': previewForecast,
  'forecast/answers': answerForecast,
  'forecast/list': listForecasts,
  'forecast/read': readForecast,
  'plan/make': makePlan,
  'plan/compare': compareWays,
  'plan/recheck': recheckPlan,
  'plan/list': listPlans,
  'plan/read': readPlan,
  'plan/sod': decideSod,
  'report/write': writeReport,
  'money/read': readMoney,
  'money/terms': saveTerms,
  'money/set-prices': setPrices,
  'money/enter-actual': enterActual,
  'money/estimate': makeEstimate,
  'inspection/add': addInspection,
  'inspection/list': listInspections,
  'inspection/read': readInspection,
  'photograph/add': addPhotograph,
  'photograph/list': listPhotographs,
  'photograph/read': readPhotograph,
  'photograph/measure': measurePhotograph,
  'learning/assimilate': assimilateInspections,
  'learning/replay': replayEvent,
  'learning/read': readAssimilation,
  'learning/list': listLearning,
  'learning/propose': proposeValues,
  'learning/accept': acceptProposal,
  'learning/refuse': refuseProposal,
  'light/month': lightOfMonth,
  'light/shadow': shadowOfHour,
  'climate/day': climateUnderCoverings,
  'weather/import': importWeather,
  'weather/set-days': setWeatherDays,
  'weather/read': readWeather,
  'job/read': readJob,
  'job/cancel': cancelJob,
};
