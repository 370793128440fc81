import type { FailureKind } from '#shared/contract/failure.ts';
import type { bookingStages, careKinds, EventKind, loadings, ZoneUse } from '#shared/vocabulary/booking.ts';
import type { Cause, Symptom, Verdict, warnings } from '#shared/vocabulary/forecast.ts';
import type { JobKind, ProgrammeKind } from '#shared/vocabulary/plan.ts';
import type { Construction, Grass } from '#shared/vocabulary/turf.ts';

/** What every kind is called, once, for pages, papers and the command line. Trade words, or plain ones of our own. */

export const causeWords: Readonly<Record<Cause, string>> = {
  light: 'want of light',
  heat: 'heat',
  frost: 'frost',
  wear: 'wear by feet',
  load: 'wheels and legs',
  wetness: 'wet ground without air',
  spill: 'spills',
};

/** What the home date asks of a zone. */
export const verdictWords: Readonly<Record<Verdict, string>> = {
  play: 'plays as it is',
  patch: 'needs mending',
  replace: 'needs new turf',
};
/** The shortest word of a verdict, for maps and grey prints. */
export const verdictMarks: Readonly<Record<Verdict, string>> = { play: 'plays', patch: 'mend', replace: 'new' };

export const symptomWords: Readonly<Record<Symptom, string>> = {
  ruts: 'ruts',
  compaction: 'firm, compacted ground',
  worn: 'worn leaf',
  torn: 'torn turf',
  yellowing: 'yellow leaf',
  'stretched-leaf': 'long pale leaf',
  scald: 'scald',
  'winter-death': 'winter death',
  wilting: 'wilting',
  'spill-burn': 'burn from spills',
  disease: 'disease likely',
  'too-wet': 'standing wet',
};

export const programmeWords: Readonly<Record<ProgrammeKind, string>> = {
  leave: 'leave to itself',
  recover: 'recover in place',
  'recover-under-lights': 'recover in place under lights',
  overseed: 'overseed in place',
  'replace-thin': 'resod, thin cut',
  'replace-thick': 'resod, thick cut',
  'plane-and-reseed': 'plane and reseed',
  'replace-carpet': 'replace the carpet',
};

export const jobWords: Readonly<Record<JobKind, string>> = {
  'lift-floor': 'lift floor',
  'litter-and-magnet': 'litter and magnet',
  'first-water': 'first water',
  flush: 'flush',
  spike: 'spike',
  'hollow-core': 'hollow core',
  'deep-tine': 'deep tine',
  topdress: 'topdress',
  'heavy-dress': 'heavy dress',
  seed: 'seed',
  germinate: 'germinate',
  feed: 'feed',
  lights: 'lights',
  'growth-cover': 'growth cover',
  strip: 'strip',
  plane: 'plane off',
  grade: 'grade and firm',
  lay: 'lay sod',
  'lay-carpet': 'lay carpet',
  'roll-and-seam': 'roll, sand seams, water',
  settle: 'settle',
  'water-new-sod': 'water new sod',
  mow: 'mow',
  paint: 'paint',
  certify: 'certify',
};

export const warningWords: Readonly<Record<(typeof warnings)[number], string>> = {
  'park-rule': 'too heavy to drive straight on turf',
  'bearing-strength': 'more than the ground bears',
  'covering-feet-only': 'covering for feet only',
  'covering-rating': 'above the rating of the covering',
  'wheel-load': 'heavy single wheel',
  'weight-off-axles': 'weight and axles disagree',
  'lorry-route-used-again': 'lorry route used again',
  'covered-longer-than-usual': 'covered longer than the trade lets it',
};

export const loadingWords: Readonly<Record<(typeof loadings)[number], string>> = {
  open: 'nothing on it',
  chairs: 'chairs',
  stage: 'stage',
  deck: 'deck',
  plant: 'plant and goods',
  ice: 'ice',
  fill: 'dirt fill',
};

export const careWords: Readonly<Record<(typeof careKinds)[number], string>> = {
  lift: 'lift panels',
  prop: 'prop edges',
  mist: 'mist',
  'sub-surface-air': 'sub-surface air',
  'soil-heating': 'soil heating',
};

export const zoneUseWords: Readonly<Record<ZoneUse, string>> = {
  stage: 'stage',
  wings: 'wings',
  'crane-pad': 'crane pad',
  pit: 'photo pit',
  thrust: 'thrust',
  standing: 'standing crowd',
  seating: 'floor seating',
  'mix-position': 'mix position',
  tower: 'tower',
  'haul-route': 'haul route',
  'cable-run': 'cable run',
  catering: 'catering, tents',
  egress: 'egress',
  rink: 'rink',
  'rink-walk': 'rink boards and walks',
  'chiller-line': 'chiller lines',
  'dirt-track': 'dirt track',
  other: 'other',
};

export const eventWords: Readonly<Record<EventKind, string>> = {
  concert: 'concert, end stage',
  'concert-in-the-round': 'concert in the round',
  festival: 'festival',
  rink: 'rink',
  'dirt-show': 'dirt show',
  ceremony: 'seated ceremony',
  other: 'other event',
};

export const stageWords: Readonly<Record<(typeof bookingStages)[number], string>> = {
  enquiry: 'enquiry',
  hold: 'hold',
  offered: 'offered',
  confirmed: 'confirmed',
  advanced: 'advanced',
  building: 'building',
  live: 'live',
  striking: 'striking',
  'handed-back': 'handed back',
  recovering: 'recovering',
  certified: 'certified',
  settled: 'settled',
  archived: 'archived',
  cancelled: 'cancelled',
};

export const failureWords: Readonly<Record<FailureKind, string>> = {
  'invalid-request': 'This cannot be taken as it stands',
  'not-found': 'It is not here',
  conflict: 'Somebody else changed it meanwhile',
  'out-of-range': 'Outside what can be reckoned',
  'no-plan': 'Not possible as things stand',
  'database-is-newer': 'This workspace was made by a newer Fieldback',
  busy: 'Busy',
  cancelled: 'Stopped',
  unexpected: 'Something went wrong',
};

export const grassWords: Readonly<Record<Grass, string>> = {
  'kentucky-bluegrass': 'Kentucky bluegrass',
  'perennial-ryegrass': 'perennial ryegrass',
  'tall-fescue': 'tall fescue',
  'bermudagrass-common': 'common bermudagrass',
  'bermudagrass-hybrid': 'hybrid bermudagrass',
  zoysiagrass: 'zoysiagrass',
  'seashore-paspalum': 'seashore paspalum',
};

export const constructionWords: Readonly<Record<Construction, string>> = {
  'sand-over-gravel': 'sand over gravel',
  'native-soil': 'native soil',
  'stitched-hybrid': 'stitched hybrid',
  'carpet-hybrid': 'carpet hybrid',
};

/** Shown, briefly, wherever a forecast or a plan is. */
export const cautions = {
  surface:
    'This forecasts turf. Whether the surface is fit for play is decided by measured tests and the competition’s own rules.',
  structures:
    'Stages, cranes, loads and anchors belong to the responsible engineer; locate buried services before anything is driven in.',
  chemicals: 'Pesticides and feeds: the label rules, and a licensed applicator; keep re-entry times.',
  people: 'Heat, cold, electricity, lifting and night work: the site’s own plans and local codes.',
  rink: 'Refrigerants and coolants stay under their operator’s emergency plan; ask before flushing anything into a drain.',
} as const;
