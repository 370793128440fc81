import type { FailureKind } from '#shared/contract/failure.ts';
import type {
  activities,
  bookingStages,
  careKinds,
  EventKind,
  incidentKinds,
  loadings,
  ZoneUse,
} from '#shared/vocabulary/booking.ts';
import type { Cause, Symptom, Verdict, warnings } from '#shared/vocabulary/forecast.ts';
import type { PaperKind } from '#shared/contract/contract.ts';
import type { JobKind, ProgrammeKind, WorkAmount } from '#shared/vocabulary/plan.ts';
import type { MachineKind, SkillKind } from '#shared/vocabulary/resources.ts';
import type { Construction, Grass, Soil } from '#shared/vocabulary/turf.ts';
import type { fixtureKinds } from '#shared/vocabulary/venue.ts';

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
  'move-lights': 'move light rigs',
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
  'covered-longer-than-usual': 'covered longer than the trade leaves it',
  'aluminium-too-long': 'roll-out aluminium too long',
  'aluminium-at-midday': 'roll-out aluminium at midday',
  'used-too-soon': 'used too soon after its floor',
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

export const activityWords: Readonly<Record<(typeof activities)[number], string>> = {
  seated: 'seated',
  standing: 'standing',
  dancing: 'dancing, jumping',
  walking: 'walking',
  skating: 'skating',
  working: 'working',
};

export const fixtureWords: Readonly<Record<(typeof fixtureKinds)[number], string>> = {
  'home-date': 'home date',
  practice: 'practice',
  blackout: 'blackout',
};

export const machineWords: Readonly<Record<MachineKind, string>> = {
  aerator: 'aerators',
  topdresser: 'topdressers',
  seeder: 'seeders',
  sprayer: 'sprayers',
  mower: 'mowers',
  stripper: 'sod strippers',
  'sod-installer': 'sod installers',
  roller: 'rollers',
  grader: 'graders',
  'light-rig': 'light rigs',
  'growth-cover': 'growth covers',
  loader: 'loaders',
};

/** What people with a skill may do. */
export const skillWords: Readonly<Record<SkillKind, string>> = {
  spraying: 'spray',
  'ground-machines': 'drive strippers and graders',
  'sod-machines': 'drive sod installers',
  electrical: 'connect light rigs',
  'surface-testing': 'test the surface',
};

/** What the work of a zone comes to. */
export const amountWords: Readonly<Record<WorkAmount, string>> = {
  'surface-pierced': 'surface pierced',
  holes: 'holes',
  'sand-in-holes': 'sand into the holes',
  'sand-on-surface': 'sand on the surface',
  'pure-live-seed': 'pure live seed',
  'seed-bought': 'seed to buy',
  nitrogen: 'nitrogen',
  fertiliser: 'fertiliser',
};

/** What each paper is called, and whom it is for. */
export const paperWords: Readonly<Record<PaperKind, { readonly name: string; readonly purpose: string }>> = {
  'recovery-report': { name: 'Recovery report', purpose: 'what happened, what is planned, when it is ready, what it costs' },
  'meeting-sheet': { name: 'Meeting sheet', purpose: 'one page for the operations meeting' },
  'sod-order': { name: 'Sod order', purpose: 'for the farm: area, cut, rolls, trucks, hours' },
  'recovery-chart': { name: 'Recovery chart', purpose: 'jobs by zone over the days, for the wall' },
  'hold-answer': { name: 'Answer to a hold', purpose: 'for booking: what the dates mean for the field' },
  'field-use-conditions': { name: 'Field-use conditions', purpose: 'for the contract: zones, floors, hours, handback' },
  'promoter-map': { name: 'Map for the promoter', purpose: 'zones, floors and routes to scale' },
  'night-before': { name: 'Night-before list', purpose: 'what must be done before the first truck' },
  'shift-sheet': { name: 'Shift sheet', purpose: 'who does what, shift by shift' },
  'inspection-form': { name: 'Inspection form', purpose: 'to walk with at baseline and handback' },
  'test-sheet': { name: 'Test sheet', purpose: 'readings of the surface by test point' },
  'charge-back': { name: 'Charge-back', purpose: 'for finance: lines, clauses, evidence' },
  'season-ledger': { name: 'Season ledger', purpose: 'all bookings, wear and sod of the season' },
  calendar: {
    name: 'Calendar file',
    purpose: 'jobs, waterings of new sod, deliveries and decisions for any calendar (iCalendar)',
  },
  'zone-table': { name: 'Zones', purpose: 'table as CSV' },
  'job-table': { name: 'Jobs', purpose: 'table as CSV' },
  'sod-table': { name: 'Trucks of sod', purpose: 'table as CSV' },
  'cost-table': { name: 'Cost lines', purpose: 'table as CSV' },
};

export const careWords: Readonly<Record<(typeof careKinds)[number], string>> = {
  lift: 'lift panels',
  prop: 'prop edges',
  mist: 'mist',
  'sub-surface-air': 'sub-surface air',
  'soil-heating': 'soil heating',
};

export const incidentWords: Readonly<Record<(typeof incidentKinds)[number], string>> = {
  petrol: 'petrol',
  motorOil: 'motor oil',
  hydraulicOil: 'hydraulic oil',
  brakeFluid: 'brake fluid',
  grease: 'grease',
  propyleneGlycol: 'propylene glycol',
  ethyleneGlycol: 'ethylene glycol',
  salt: 'salt',
  iceMelt: 'ice melt',
  drink: 'drink',
  ice: 'ice on the turf',
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
  gate: 'gate throat',
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

export const soilWords: Readonly<Record<Soil, string>> = {
  sand: 'sand',
  'loamy-sand': 'loamy sand',
  'sandy-loam': 'sandy loam',
  'silt-loam': 'silt loam',
  'clay-loam': 'clay loam',
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
