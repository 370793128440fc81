import { z } from 'zod';
import { Money, Farm, Rules, Workforce, machineKinds, skillKinds } from '#shared/vocabulary/resources.ts';
import { Id, LocalDate, LocalTime, Name, Note, Share, within } from '#shared/vocabulary/primitives.ts';
import { standings } from '#shared/sources/standing.ts';
import { constructions } from '#shared/vocabulary/turf.ts';

/** Every job the crew, the farm or time itself does on the way back. */
export const jobKinds = [
  'lift-floor',
  'litter-and-magnet',
  'first-water',
  'flush',
  'spike',
  'hollow-core',
  'deep-tine',
  'topdress',
  'heavy-dress',
  'seed',
  'germinate',
  'feed',
  'lights',
  'move-lights',
  'growth-cover',
  'strip',
  'plane',
  'grade',
  'lay',
  'lay-carpet',
  'roll-and-seam',
  'settle',
  'water-new-sod',
  'mow',
  'paint',
  'certify',
] as const;
export type JobKind = (typeof jobKinds)[number];

/** Weather that stops a job. */
export const weatherStops = ['rain', 'wind', 'frost', 'saturation', 'heat'] as const;
export type WeatherStop = (typeof weatherStops)[number];

/** Materials a job uses up, each with the unit it is priced in. */
export const materialUnits = { seed: 'kg', sand: 't', feed: 'kg', carpet: 'm²', disposal: 'm³' } as const;
export type MaterialKind = keyof typeof materialUnits;
export const materialKinds = Object.keys(materialUnits) as [MaterialKind, ...MaterialKind[]];

/** What one job needs and does. Durations follow from the area: `fixedHours + area / rate`. */
export const Job = z
  .strictObject({
    kind: z.enum(jobKinds),
    name: Name,
    /** Jobs that come before it wherever both are done. */
    needs: z.array(z.enum(jobKinds)).readonly(),
    /** m² per working hour of the whole crew with one machine; null where the area does not matter. */
    rate: within(1, 100000, 'm²/h').nullable(),
    /** Working hours it takes whatever the area. */
    fixedHours: within(0, 1000, 'h'),
    crew: z.int().min(0).max(100),
    machine: z.enum(machineKinds).nullable(),
    /** People of the crew who must hold a skill; absent: none. */
    skill: z
      .strictObject({ kind: z.enum(skillKinds), people: z.int().min(1).max(100) })
      .readonly()
      .optional(),
    /** Needs daylight. */
    daylight: z.boolean(),
    /** Falls under the curfew. */
    noisy: z.boolean(),
    /** Brings a machine that may only cross lost or boarded ground. */
    heavy: z.boolean(),
    /** Opens the ground, so that nothing else crosses the zone meanwhile. */
    opensGround: z.boolean(),
    stoppedBy: z.array(z.enum(weatherStops)).readonly(),
    /** May be broken off at the end of a shift and go on later. */
    mayPause: z.boolean(),
    /** h at least, and at most (null: no limit), between the end of the job before and its own start. */
    lagAtLeast: within(0, 2000, 'h'),
    lagAtMost: within(0, 2000, 'h').nullable(),
    /** Material per m², in the unit of its price. */
    material: z
      .strictObject({ kind: z.enum(materialKinds), perArea: within(0, 1000) })
      .readonly()
      .nullable(),
    /** What it changes in the zone, in words. */
    changes: Note,
    standing: z.enum(standings),
    basis: Note,
  })
  .readonly();
export type Job = z.infer<typeof Job>;

/** The ways a zone can be brought back. */
export const programmeKinds = [
  'leave',
  'recover',
  'recover-under-lights',
  'overseed',
  'replace-thin',
  'replace-thick',
  'plane-and-reseed',
  'replace-carpet',
] as const;
export type ProgrammeKind = (typeof programmeKinds)[number];

/** A way back as a chain of jobs in their order. */
export const Programme = z
  .strictObject({
    kind: z.enum(programmeKinds),
    jobs: z.array(z.enum(jobKinds)).max(20).readonly(),
    /** Short job repeated every day from the end of the chain until the home date; null where none is. */
    daily: z.enum(jobKinds).nullable(),
    /** Which cut of sod it asks a farm for. */
    sod: z.enum(['thin', 'thick']).nullable(),
  })
  .readonly();
export type Programme = z.infer<typeof Programme>;

/** Half a day: 06:00–18:00 or 18:00–06:00 on the wall clock. 11 or 13 h long where the clocks change. */
export const Shift = z
  .strictObject({
    start: LocalTime,
    end: LocalTime,
    night: z.boolean(),
    /** Chance that rain stops dry work. */
    rainChance: Share,
    frozen: z.boolean(),
    windy: z.boolean(),
    saturated: z.boolean(),
    hot: z.boolean(),
  })
  .readonly();
export type Shift = z.infer<typeof Shift>;

const ZoneLetter = z.string().regex(/^[A-Z][A-Z0-9]?$/, 'must be a capital letter, perhaps with one more letter or digit');

/** What a zone will be on the home date when its programme ends on a day; one entry per day from `firstDay`. */
export const Readiness = z
  .strictObject({
    zone: ZoneLetter,
    window: Id,
    programme: z.enum(programmeKinds),
    /** Holds only after this programme in the window before; null: whatever came before. */
    after: z.enum(programmeKinds).nullable(),
    firstDay: LocalDate,
    /** Chance of being ready, 0–1. */
    chance: z.array(Share).min(1).max(400).readonly(),
    /** Expected distance from the cover the venue asks for, 0–1. */
    shortfall: z.array(Share).min(1).max(400).readonly(),
  })
  .refine((row) => row.chance.length === row.shortfall.length, {
    path: ['shortfall'],
    message: 'must have as many days as chance',
  })
  .readonly();
export type Readiness = z.infer<typeof Readiness>;

/** Prices of materials, in money per unit; null where none is entered. */
export const MaterialPrices = z.record(z.enum(materialKinds), Money.nullable()).readonly();
export type MaterialPrices = z.infer<typeof MaterialPrices>;

/** Numbers of the catalogue the planner works with. */
export const PlanSettings = z
  .strictObject({
    /** Share of a shift that is work: breaks, fetching and washing down taken off. */
    workShare: within(0.2, 1),
    /** Chance of rain from which a shift is not planned for dry work. */
    rainMask: Share,
    /** Longest pause of a job, h. */
    longestPause: within(0, 240, 'h'),
    /** Price of moving one job against the plan before, in money. */
    movePrice: within(0, 1e9),
    /** kg/m³ of moist sod. */
    sodDensity: within(800, 2500, 'kg/m³'),
    /** h to cut and load one truck. */
    cutHours: within(0, 24, 'h'),
    /** h sod may lie in the roll, in cool and in hot weather. */
    rollHours: within(1, 96, 'h'),
    rollHoursHot: within(1, 96, 'h'),
  })
  .readonly();
export type PlanSettings = z.infer<typeof PlanSettings>;

export const RecoveryZone = z
  .strictObject({
    letter: ZoneLetter,
    /** m² */
    area: within(1, 40000, 'm²'),
    /** How much it is seen and played on; 1 is ordinary. */
    weight: within(0, 10),
    neighbours: z.array(ZoneLetter).readonly(),
    /** Zones a machine crosses on its way from the gate. */
    route: z.array(ZoneLetter).readonly(),
    /** Panels lie on it, so that machines may cross. */
    boarded: z.boolean(),
  })
  .readonly();
export type RecoveryZone = z.infer<typeof RecoveryZone>;

/** The time between the last covering off and a home date. */
export const RecoveryWindow = z
  .strictObject({
    id: Id,
    name: Name,
    homeDate: LocalTime,
    /** m² of turf that would need replacing by then, one number a member of the forecast. */
    need: z.array(z.number().min(0)).readonly().optional(),
    /** Days on which rain stops dry work in each member of the forecast, `1` where it does, a sign a day from `from`. */
    rain: z
      .strictObject({ from: LocalDate, members: z.array(z.string().regex(/^[01]*$/)).readonly() })
      .readonly()
      .optional(),
    /** Zones to bring back and when each is clear. */
    zones: z
      .array(z.strictObject({ letter: ZoneLetter, from: LocalTime }).readonly())
      .min(1)
      .readonly(),
  })
  .readonly();
export type RecoveryWindow = z.infer<typeof RecoveryWindow>;

/** Hours in which nobody works on the field. */
export const blockKinds = ['event', 'practice', 'blackout', 'home-date', 're-entry'] as const;
export const Block = z
  .strictObject({
    kind: z.enum(blockKinds),
    name: Name,
    from: LocalTime,
    until: LocalTime,
    /** null: the whole field */ zones: z.array(ZoneLetter).readonly().nullable(),
  })
  .refine((block) => block.until > block.from, { path: ['until'], message: 'must be after it starts' })
  .readonly();
export type Block = z.infer<typeof Block>;

/** A choice of the venue that the planner keeps. */
export const Lock = z
  .strictObject({
    zone: ZoneLetter,
    window: Id,
    programme: z.enum(programmeKinds),
    /** Farm the sod comes from. */ farm: Id.nullable(),
  })
  .readonly();
export type Lock = z.infer<typeof Lock>;

/** A job that is over or under way, or that is held by hand to hours to come. */
export const DoneJob = z
  .strictObject({ zone: ZoneLetter, window: Id, job: z.enum(jobKinds), start: LocalTime, end: LocalTime })
  .readonly();
export type DoneJob = z.infer<typeof DoneJob>;

/** Everything the planner needs, as plain data. */
export const RecoveryProblem = z
  .strictObject({
    construction: z.enum(constructions),
    /** Sand share of the root zone, and the most by which that of sod may differ; absent: any sod fits. */
    soil: z.strictObject({ sandShare: Share, gap: Share }).readonly().optional(),
    /** m² that one light rig lights and kW it draws; absent: rigs set no limit. */
    rigs: z
      .strictObject({ area: within(1, 5000, 'm²'), power: within(0, 1000, 'kW') })
      .readonly()
      .optional(),
    /** IANA zone of the venue; every time is on its wall clock. */
    timeZone: z.string(),
    /** The moment from which something can still be decided or done. */
    now: LocalTime,
    shifts: z.array(Shift).min(1).max(1200).readonly(),
    blocks: z.array(Block).max(400).readonly(),
    zones: z.array(RecoveryZone).min(1).max(60).readonly(),
    windows: z.array(RecoveryWindow).min(1).max(12).readonly(),
    workforce: Workforce,
    farms: z.array(Farm).max(20).readonly(),
    rules: Rules,
    jobs: z.array(Job).readonly(),
    programmes: z.array(Programme).min(1).readonly(),
    prices: MaterialPrices,
    readiness: z.array(Readiness).readonly(),
    settings: PlanSettings,
    /** Half-field method: everything laid in the zones `before`, then the zones `after` are opened. */
    sequences: z
      .array(z.strictObject({ before: z.array(ZoneLetter).readonly(), after: z.array(ZoneLetter).readonly() }).readonly())
      .readonly(),
    /** h that the work of a zone ends before it would have to, so that rain can be waited out. */
    buffers: z
      .array(z.strictObject({ zone: ZoneLetter, window: Id, hours: within(0, 2000, 'h') }).readonly())
      .readonly()
      .optional(),
    locks: z.array(Lock).readonly(),
    /** Jobs that are over, or under way and end at a known hour. */
    done: z.array(DoneJob).readonly(),
    /** Jobs to come that begin at a known hour; how long they take is for the planner to say. */
    held: z.array(DoneJob).readonly().optional(),
    /** Sod already released: the farm's notice runs from there. */
    released: z.array(z.strictObject({ window: Id, farm: Id, at: LocalTime }).readonly()).readonly(),
    /** Jobs of the plan before, which the new one prefers. */
    before: z.array(DoneJob).readonly(),
  })
  .readonly();
export type RecoveryProblem = z.infer<typeof RecoveryProblem>;

/** Hours of a job in one shift. */
export const ShiftWork = z.strictObject({ shift: z.int().min(0), hours: within(0, 24, 'h') }).readonly();

export const PlannedJob = z
  .strictObject({
    /** null: the whole field. */
    zone: ZoneLetter.nullable(),
    window: Id,
    job: z.enum(jobKinds),
    start: LocalTime,
    end: LocalTime,
    crew: z.int().min(0),
    machine: z.enum(machineKinds).nullable(),
    /** Working hours by number of shift. */
    work: z.array(ShiftWork).readonly(),
    done: z.boolean(),
  })
  .readonly();
export type PlannedJob = z.infer<typeof PlannedJob>;

export const ZonePlan = z
  .strictObject({
    zone: ZoneLetter,
    window: Id,
    programme: z.enum(programmeKinds),
    /** Farm the sod comes from. */
    farm: Id.nullable(),
    jobs: z.array(PlannedJob).readonly(),
    /** Hours a day that the daily job takes until the home date; 0 where there is none. */
    dailyHours: within(0, 24, 'h'),
    /** End of the last job; null where nothing is done. */
    finish: LocalTime.nullable(),
    /** Latest end of the last job. */
    latestFinish: LocalTime,
    /** h between the two. */
    slack: z.number(),
    chanceReady: Share,
    /** The same when the work waits out the rain of each member; left out where no members are known. */
    chanceInRain: Share.optional(),
    shortfall: Share,
  })
  .readonly();
export type ZonePlan = z.infer<typeof ZonePlan>;

export const Truck = z
  .strictObject({
    number: z.int().min(1),
    /** When its load is cut, leaves, arrives, is begun and is down. */
    cut: LocalTime,
    leave: LocalTime,
    arrive: LocalTime,
    begin: LocalTime,
    down: LocalTime,
    rolls: z.int().min(0),
    area: within(0, 40000, 'm²'),
    weight: within(0, 60000, 'kg'),
    /** h the first roll of it lies rolled up. */
    hoursInRoll: z.number().min(0),
    zones: z.array(ZoneLetter).readonly(),
  })
  .readonly();
export type Truck = z.infer<typeof Truck>;

/** One step of the way back from a fixed hour to the hour of a decision. */
export const BackwardTerm = z
  .strictObject({ name: Name, hours: z.number(), /** Where this brings us. */ at: LocalTime })
  .readonly();
export type BackwardTerm = z.infer<typeof BackwardTerm>;

export const SodOrder = z
  .strictObject({
    window: Id,
    farm: Id,
    cut: z.enum(['thin', 'thick']),
    zones: z.array(ZoneLetter).readonly(),
    /** m² to lie, and to order with waste. */
    area: within(0, 100000, 'm²'),
    ordered: within(0, 200000, 'm²'),
    rolls: z.int().min(0),
    /** kg */
    weight: z.number().min(0),
    trucks: z.array(Truck).readonly(),
    releaseBy: LocalTime,
    /** From the first roll laid back to the release. */
    terms: z.array(BackwardTerm).readonly(),
    /** h between now and the release. */
    slack: z.number(),
    price: Money.nullable(),
    freight: Money.nullable(),
    /** What a release called off costs. */
    cancelFee: Money.nullable(),
  })
  .readonly();
export type SodOrder = z.infer<typeof SodOrder>;

export const costKinds = ['labour', 'overtime', 'sod', 'freight', ...materialKinds] as const;
export const CostLine = z
  .strictObject({
    kind: z.enum(costKinds as unknown as readonly [string, ...string[]]),
    quantity: z.number().min(0),
    unit: z.string(),
    /** null: no price is entered; the line is not in the sum. */
    price: Money.nullable(),
    sum: z.number().min(0).nullable(),
    note: Note,
  })
  .readonly();
export type CostLine = z.infer<typeof CostLine>;

/** The last hour at which something can still be decided. */
export const Decision = z
  .strictObject({
    name: Name,
    window: Id,
    at: LocalTime,
    /** h from now */ slack: z.number(),
    terms: z.array(BackwardTerm).readonly(),
  })
  .readonly();
export type Decision = z.infer<typeof Decision>;

/** What the work of a zone comes to, each with its unit. */
export const workAmounts = [
  'surface-pierced',
  'holes',
  'sand-in-holes',
  'sand-on-surface',
  'pure-live-seed',
  'seed-bought',
  'nitrogen',
  'fertiliser',
] as const;
export type WorkAmount = (typeof workAmounts)[number];
export const WorkQuantity = z
  .strictObject({
    zone: ZoneLetter,
    window: Id,
    job: z.enum(jobKinds),
    what: z.enum(workAmounts),
    value: z.number().min(0),
    unit: z.enum(['1', 'holes', 't', 'kg']),
  })
  .readonly();
export type WorkQuantity = z.infer<typeof WorkQuantity>;

/** One watering of young sod, a job of its own: mm of water and m³ on the zone. */
export const SodWatering = z
  .strictObject({ zone: ZoneLetter, window: Id, at: LocalTime, depth: within(0, 100, 'mm'), volume: z.number().min(0) })
  .readonly();
export type SodWatering = z.infer<typeof SodWatering>;

/** How long the sod of a truck lies rolled up against what the heat of that day allows. */
export const RollHours = z
  .strictObject({
    window: Id,
    farm: Id,
    cut: z.enum(['thin', 'thick']),
    truck: z.int().min(1),
    /** °C, the day's maximum of the middle member. */
    temperature: z.number(),
    hours: within(0, 240, 'h'),
    allowed: within(0, 240, 'h'),
    within: z.boolean(),
  })
  .readonly();
export type RollHours = z.infer<typeof RollHours>;

/** What the jobs of a plan come to beside hours and money. */
export const PlanWorks = z
  .strictObject({
    quantities: z.array(WorkQuantity).readonly(),
    waterings: z.array(SodWatering).readonly(),
    rolls: z.array(RollHours).readonly(),
    /** What is not as it should be, in words. */
    cautions: z.array(Note).readonly(),
  })
  .readonly();
export type PlanWorks = z.infer<typeof PlanWorks>;

export const RecoveryPlan = z
  .strictObject({
    zones: z.array(ZonePlan).readonly(),
    fieldJobs: z.array(PlannedJob).readonly(),
    orders: z.array(SodOrder).readonly(),
    cost: z
      .strictObject({
        lines: z.array(CostLine).readonly(),
        /** Sum of the priced lines. */
        total: z.number().min(0),
        /** Lines without a price, by name; they are in no sum. */
        unpriced: z.array(z.string()).readonly(),
      })
      .readonly(),
    decisions: z.array(Decision).readonly(),
    /** What was aimed at first: money, or people-hours where a price is missing. */
    aim: z.enum(['least-cost', 'least-people-hours']),
    /** Value of the aim, and what no plan can beat. */
    value: z.number(),
    bound: z.number(),
    gap: z.number().min(0),
    /** The gap is at most what was asked for. */
    proven: z.boolean(),
    /** Time ran out in some stage: another run may end elsewhere. */
    stoppedByTime: z.boolean(),
    /** Jobs that start at another hour than in the plan before. */
    moved: z
      .array(z.strictObject({ zone: ZoneLetter, job: z.enum(jobKinds), from: LocalTime, to: LocalTime }).readonly())
      .readonly(),
    cautions: z.array(Note).readonly(),
    /** Left out in plans kept before it was reckoned. */
    works: PlanWorks.optional(),
  })
  .readonly();
export type RecoveryPlan = z.infer<typeof RecoveryPlan>;

/** A change of the circumstances that would help, small enough to be applied by the program itself. */
export const Mend = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('more-people'), people: z.int().min(1) }),
  z.strictObject({ kind: z.literal('more-machines'), machine: z.enum(machineKinds), count: z.int().min(1) }),
  z.strictObject({ kind: z.literal('more-skilled'), skill: z.enum(skillKinds), people: z.int().min(1) }),
  z.strictObject({ kind: z.literal('more-trucks'), farm: Id, perDay: z.int().min(1) }),
  z.strictObject({ kind: z.literal('shorter-notice'), farm: Id, hours: z.number().min(0) }),
  z.strictObject({ kind: z.literal('earlier-strike'), window: Id, hours: z.number().min(0) }),
  z.strictObject({ kind: z.literal('later-home-date'), window: Id, days: z.int().min(1) }),
  /** Boards for heavy machines over every zone that they cross. */
  z.strictObject({ kind: z.literal('boards') }),
  /** Both halves of the field at once. */
  z.strictObject({ kind: z.literal('whole-field') }),
  /** Jobs held by hand may move again. */
  z.strictObject({ kind: z.literal('let-go') }),
  z.strictObject({ kind: z.literal('zones-not-ready'), window: Id, zones: z.array(ZoneLetter).readonly() }),
]);
export type Mend = z.infer<typeof Mend>;

export const OfferedMend = z
  .strictObject({
    mend: Mend,
    /** In the user's words, with its size. */
    words: Note,
    /** What it costs; null where no price is entered. */
    price: Money.nullable(),
  })
  .readonly();
export type OfferedMend = z.infer<typeof OfferedMend>;

export const NotPossible = z
  .strictObject({
    /** The rules that cannot be kept, first the one met first. */
    reasons: z.array(Note).min(1).readonly(),
    mends: z.array(OfferedMend).max(3).readonly(),
    /** Kinds of mend that alone do not help, and kinds not decided in the time given. */
    noHelp: z.array(z.string()).readonly(),
    undecided: z.array(z.string()).readonly(),
    /** First home date that could be met as things stand, per window that fails; null where none within the shifts given. */
    firstDate: LocalTime.nullable(),
  })
  .readonly();
export type NotPossible = z.infer<typeof NotPossible>;

export const PlanAnswer = z.discriminatedUnion('outcome', [
  z.strictObject({ outcome: z.literal('plan'), plan: RecoveryPlan }),
  z.strictObject({ outcome: z.literal('not-possible'), because: NotPossible }),
  z.strictObject({ outcome: z.literal('stopped'), reason: Note }),
]);
export type PlanAnswer = z.infer<typeof PlanAnswer>;
