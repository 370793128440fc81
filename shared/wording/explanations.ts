/**
 * How every figure on the sheet is found: in words, as the equation behind it, and which numbers of the catalogue go into it. Names may
 * hold `{season}`, `{soil}`, `{grass}` and `{use}`, filled in for the venue and the zone that is looked at.
 */
export interface Explanation {
  readonly title: string;
  /** Sentences and equations, in order. */
  readonly how: readonly string[];
  /** Names of the catalogue, or the beginnings of several names, ending in a point. */
  readonly numbers: readonly string[];
  /** How far it can be leaned on. */
  readonly standing: string;
}

const ownEquation =
  'The equation is our own and lies inside what is published; it is no measurement. Compare it with two or three of your own past shows.';

export const figureKinds = [
  'area',
  'hours-covered',
  'hours-dark',
  'crown-temperature',
  'light',
  'footfalls',
  'pressure',
  'ruts',
  'cover-before',
  'cover-after',
  'cover-home',
  'chance-ready',
  'chance-all',
  'days-to-ready',
  'replace-area',
  'verdict',
  'cause-light',
  'cause-heat',
  'cause-frost',
  'cause-wear',
  'cause-load',
  'cause-wetness',
  'cause-spill',
  'growth-potential',
  'release',
  'slack',
  'cost',
] as const;
export type FigureKind = (typeof figureKinds)[number];

export const explanations: Readonly<Record<FigureKind, Explanation>> = {
  area: {
    title: 'Turf of the zone',
    how: [
      'The part of the outline that lies on turf. Ground that two outlines share belongs to the zone listed first.',
      'Measured on a grid of cells; a cell on an edge counts with the share of it that is turf.',
    ],
    numbers: ['light.cellSize'],
    standing: 'Arithmetic from the drawing.',
  },
  'hours-covered': {
    title: 'Hours covered',
    how: ['Every hour, in real hours, in which the production schedule has a covering on the zone.'],
    numbers: [],
    standing: 'Arithmetic from the schedule; actual hours replace planned ones as they are entered.',
  },
  'hours-dark': {
    title: 'Hours without any light',
    how: [
      'Covered hours under a covering that passes no light, or under anything that stands on it (chairs, stage, deck, goods, ice, fill).',
    ],
    numbers: [],
    standing: 'Arithmetic from the schedule and the class of covering.',
  },
  'crown-temperature': {
    title: 'Temperature of the crowns under the covering',
    how: [
      'Hour by hour: sun and sky on top of the covering, air above and in the gap below it, and heat stored in the soil; the warmth of soil and roots is carried on from hour to hour.',
      'Shown: the mean of all covered hours and the hottest of them, in the usual season.',
    ],
    numbers: ['heat.canopy.', 'heat.covering.openVentilation', 'heat.convection.', 'heat.chairs.', 'forecast.spinUp'],
    standing: 'A heat balance with published terms; the exchange in the gap is our assumption.',
  },
  light: {
    title: 'Light under the covering',
    how: [
      'Useful light of the day in the open (stands and roof taken off) × share the covering passes × share left by dirt; none under chairs, stage or goods.',
    ],
    numbers: ['light.molPerMegajoule', 'light.parShare', 'light.saturation.{season}'],
    standing: 'Sun path and shade are geometry; what a covering passes is the entry of its class.',
  },
  footfalls: {
    title: 'Steps on the turf',
    how: ['People per m² × steps a minute for what they do × time, summed over all crowds of the zone.'],
    numbers: ['wear.steps.', 'wear.walk.step', 'wear.walk.lane'],
    standing: 'Counting with step rates that are our assumption.',
  },
  pressure: {
    title: 'Pressure on the turf',
    how: [
      'The worst wheel, leg or pad. Without a panel: the pressure under the tyre. Through a panel: a plate or a beam on springs carries it to the ground (Westergaard, Hetényi).',
    ],
    numbers: ['panel.', 'ground.springs.{soil}', 'park.pressure'],
    standing: 'Textbook equations on the class of floor and machine; the supplier’s sheet and the responsible engineer decide.',
  },
  ruts: {
    title: 'Depth of ruts',
    how: ['Sinkage of one pass in ground of that wetness, deeper with the passes after it, never deeper than the limit.'],
    numbers: ['rut.yieldShare', 'rut.passExponent', 'rut.deepest', 'strength.frictionAngle.{soil}', 'strength.cohesion.{soil}'],
    standing: 'Textbook equations; soil values are typical for the class, not measured here.',
  },
  'cover-before': {
    title: 'Live cover before the first layer',
    how: ['The state the field usually has, carried on day by day with weather, mowing, play and earlier events.'],
    numbers: ['gp.optimum.{season}', 'gp.spread.{season}', 'play.homeDate', 'play.practice'],
    standing: 'Forecast; a baseline inspection replaces it.',
  },
  'cover-after': {
    title: 'Live cover when the last layer is off',
    how: [
      'Live cover before × share kept by light × heat × frost × feet × wheels and legs × wet ground × spills.',
      'Evening of the day on which the last covering goes. Some of the loss shows only after days.',
    ],
    numbers: ['reserve.darkDays.{season}', 'heat.halfKill.{season}', 'wear.walk.half.lawn', 'wetness.halfHours.leaf'],
    standing: ownEquation,
  },
  'cover-home': {
    title: 'Live cover on the home date, with nothing done',
    how: [
      'From the state after the event, each day: cover + rate × (what crowns and reserve can carry − cover).',
      'rate = best rate of the grass × growth potential × light × feed × firmness of the ground; nothing grows back at a growth potential of one tenth or less.',
      'The figure is the middle of the members; P10–P90 is the range that eight of ten members fall into.',
    ],
    numbers: [
      'recovery.leaf.{grass}',
      'recovery.spread.{grass}',
      'recovery.rateLimit',
      'gp.optimum.{season}',
      'gp.spread.{season}',
      'gp.stop',
      'lightNeed.{grass}',
      'compaction.free',
    ],
    standing: ownEquation,
  },
  'chance-ready': {
    title: 'Chance of being ready with nothing done',
    how: [
      'Share of the members in which, on the evening before the home date, live cover is at least what the venue asks and no rut is deeper than allowed.',
      'With one member (the usual season) it can only be 0 or 100 %.',
    ],
    numbers: [],
    standing: 'A count. Readiness itself is decided by measured tests and the competition’s own rules.',
  },
  'chance-all': {
    title: 'Chance that every zone is ready with nothing done',
    how: ['Share of the members in which every zone is ready at once. It is never more than the chance of the worst zone.'],
    numbers: [],
    standing: 'A count. Readiness itself is decided by measured tests and the competition’s own rules.',
  },
  'days-to-ready': {
    title: 'Days until ready by itself',
    how: ['Days from the last covering off to the first evening on which cover and ruts meet the venue’s rules, nothing done.'],
    numbers: [],
    standing: ownEquation,
  },
  'replace-area': {
    title: 'Turf not ready by itself',
    how: ['Turf whose live cover on the home date is below what the venue asks, nothing done: middle and range of the members.'],
    numbers: ['replace.crowns'],
    standing: ownEquation,
  },
  verdict: {
    title: 'Left alone',
    how: [
      'Plays as it is: the chance of being ready reaches what the venue asks of a plan.',
      'Needs new turf: fewer living crowns are left than can close the gap. Needs mending: all else.',
    ],
    numbers: ['replace.crowns'],
    standing: 'A rule of ours over the forecast. The inspection at handback decides.',
  },
  'cause-light': {
    title: 'Want of light',
    how: [
      'Without light the turf lives on its reserve. Use a day = 1/D · Q10^((T − 20)/10) · (1 + s · seal): warm and sealed is fastest.',
      'Leaf kept = logistic((reserve − half)/spread); crowns hold to a lower reserve.',
    ],
    numbers: [
      'reserve.darkDays.{season}',
      'reserve.q10',
      'reserve.sealLoss.warm',
      'reserve.holdLight.{season}',
      'reserve.halfLeaf',
      'reserve.leafSpread',
      'reserve.halfCrowns',
      'reserve.crownsSpread',
      'dark.',
    ],
    standing: ownEquation,
  },
  'cause-heat': {
    title: 'Heat',
    how: ['t50(T) = 96 h · 10^((T50 − T)/z); dose = Σ hours / t50; crowns kept = 1/(1 + dose^s). A dose of one kills half.'],
    numbers: ['heat.halfKill.{season}', 'heat.decade', 'heat.doseSteepness'],
    standing: 'T50 of Kentucky bluegrass is published; slope and steepness are our assumption.',
  },
  'cause-frost': {
    title: 'Frost',
    how: ['LT50(t) = LT50 + b ln(1 + t/τ): how cold and for how long, against how far the stand is hardened.'],
    numbers: ['frost.slope', 'frost.duration.', 'frost.hardening.', 'frost.dehardening.'],
    standing: 'Curve fitted to a published trial; hardening of this stand is a forecast.',
  },
  'cause-wear': {
    title: 'Wear by feet',
    how: [
      'Kept = 2^(−steps · wetness · what the covering lets through / (tolerance of the grass · steps that halve it)).',
      'Half of a mown sward is gone after the published number of passes of a lane.',
    ],
    numbers: ['wear.walk.', 'wear.tolerance.foot.{grass}', 'wear.wet.{soil}', 'wear.zone.{use}', 'wear.crownShare'],
    standing: 'Published curve of trampling; rates of steps and zone factors are our assumption.',
  },
  'cause-load': {
    title: 'Wheels and legs',
    how: [
      'Wheels: 2^(−passes · wetness · what the covering lets through / (tolerance · half)), and again by the depth of the rut.',
      'Legs: 1/(1 + (pressure/strength/half)³) on the ground they press.',
    ],
    numbers: ['wear.wheel.', 'wear.rut.', 'wear.crush.', 'wear.tolerance.wheel.{grass}', 'stress.singleWheelCaution'],
    standing: 'Pressures by textbook equations; what they do to turf is our assumption.',
  },
  'cause-wetness': {
    title: 'Wet ground without air',
    how: ['Hours of full pores under a seal, counted faster when warm; kept = 1/(1 + (hours/half)^steepness).'],
    numbers: ['wetness.'],
    standing: 'Our assumption.',
  },
  'cause-spill': {
    title: 'Spills',
    how: ['Weeks a spill keeps turf down, by what was spilt and whether it was treated in time; on its own area.'],
    numbers: ['spill.treatWithin', 'spill.weeks.'],
    standing: 'Weeks of five agents come from a published trial; the others are our assumption.',
  },
  'growth-potential': {
    title: 'Growth potential',
    how: ['GP(T) = exp(−½((T − To)/s)²) of the mean air temperature of the day; 1 is the best growth of the grass.'],
    numbers: ['gp.optimum.{season}', 'gp.spread.{season}', 'gp.good', 'gp.stop'],
    standing: 'Published curve.',
  },
  release: {
    title: 'Last hour of the release',
    how: [
      'First roll laid, back by the road, back by cutting and loading, back by the farm’s notice, into hours in which the farm cuts.',
    ],
    numbers: ['plan.'],
    standing: 'Arithmetic from the plan, the farm’s terms and the venue’s rules.',
  },
  slack: {
    title: 'Hours in hand',
    how: [
      'Latest end that still meets painting, settling, the test of the surface and the venue’s reserve, less the planned end.',
    ],
    numbers: [],
    standing: 'Arithmetic from the plan and the venue’s rules.',
  },
  cost: {
    title: 'Cost of the plan',
    how: ['Quantity × price entered by the venue, line by line. A line without a price is named and is in no sum.'],
    numbers: [],
    standing: 'Arithmetic from prices you entered; those of the sample are invented.',
  },
};
