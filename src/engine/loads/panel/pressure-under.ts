import { loadWithin } from '#engine/loads/panel/plate-on-springs.ts';
import { kei } from '#engine/loads/panel/kelvin.ts';
import { type Creep, standingModulus } from '#engine/loads/panel/standing-modulus.ts';

/**
 * Peak pressure on the turf under one wheel, leg or pad that stands on a covering.
 *
 * - nothing or a sheet: the contact pressure q = P/A itself.
 * - plate (Westergaard): interior p = q F(a/l), F the exact load share within a circle; edge and corner by their own formulas,
 *   p = q π (a/l)² f(a/l). Those formulas hold for a/l ≤ 0.4; beyond, their ratio to the interior at 0.4 is kept. One panel
 *   cannot spread further than its own size: at least P/B² inside, 4 P/B² at an edge and 7 P/B² at a corner of a rigid square
 *   panel of side B (tilting block on springs).
 * - beam: a plank on springs loaded over the length of the patch, infinite or with the load at its free end.
 * - rigid pad: the tilting block alone.
 *
 * The pressure never exceeds q. The `radius` returned is that of a circle which carries the whole load at the peak pressure; the
 * stress at depth is taken under that circle.
 *
 * @source westergaard-1926
 * @source ioannides-1985
 * @source hetenyi-1946
 */
export type PanelPosition = 'interior' | 'edge' | 'corner';

/** What the spread needs to know of a covering; `Covering` of the vocabulary has all of it. */
export interface SpreadingCovering {
  readonly spread: 'none' | 'plate' | 'beam' | 'rigid-pad';
  /** m */
  readonly thickness: number;
  /** MPa, short-term */
  readonly modulus: number;
  /** m, shorter side of one panel; 0 for sheets */
  readonly panelWidth: number;
}

export interface GroundUnderPanel {
  /** kN/m³ */
  readonly springs: number;
  readonly poisson: number;
  readonly creep: Creep;
  /** Hours the load stands; 0 for a rolling wheel. */
  readonly standingHours: number;
}

export interface SpreadLoad {
  /** kPa on the turf */
  readonly peak: number;
  /** m; π radius² × peak = load */
  readonly radius: number;
}

const formulaLimit = 0.4;
/** F reaches 1 just below x = 2.7 and stays about there. */
const interiorShare = (s: number): number => (s > 3 ? 1 : Math.min(1, Math.max(0, loadWithin(s))));

const edgeSeries = (s: number, poisson: number): number =>
  Math.PI * s * s * Math.sqrt((2 + 1.2 * poisson) / (12 * (1 - poisson ** 2))) * (1 - (0.76 + 0.4 * poisson) * s);
const cornerSeries = (s: number): number => Math.PI * s * s * (1.205 - 0.69 * 1.772 * s);

/** Share of the contact pressure that reaches the ground under a circle of a/l = `s`; 0–1, rising with `s`. */
export const plateShare = (s: number, position: PanelPosition, poisson: number): number => {
  if (!(s >= 0)) throw new RangeError('a/l: must be at least 0');
  if (position === 'interior') return interiorShare(s);
  const series = position === 'edge' ? (x: number) => edgeSeries(x, poisson) : cornerSeries;
  if (s <= formulaLimit) return series(s);
  return Math.min(1, (series(formulaLimit) / interiorShare(formulaLimit)) * interiorShare(s));
};

const tilt = { interior: 1, edge: 4, corner: 7 } as const;

const beamShare = (lambda: number, halfLength: number, position: PanelPosition): number => {
  const u = lambda * halfLength;
  if (position === 'interior') return u >= Math.PI / 2 ? 1 : 1 - Math.exp(-u) * Math.cos(u);
  const v = 2 * u;
  return v >= Math.PI / 4 ? 1 : 1 + Math.exp(-v) * (Math.sin(v) - Math.cos(v));
};

/** kN on a contact patch of `area` m²; the patch counts as a circle (plate) or a square (beam) of that area. */
export const pressureUnder = (
  load: number,
  area: number,
  covering: SpreadingCovering,
  ground: GroundUnderPanel,
  position: PanelPosition,
): SpreadLoad => {
  if (!(load >= 0)) throw new RangeError('load: must be at least 0');
  if (!(area > 0)) throw new RangeError('area: must be above 0');
  if (!(ground.springs > 0)) throw new RangeError('springs: must be above 0');
  const contact = load / area;
  const peak = contact * shareThrough(area, covering, ground, position);
  return { peak, radius: load > 0 ? Math.sqrt(load / (Math.PI * peak)) : Math.sqrt(area / Math.PI) };
};

const shareThrough = (area: number, covering: SpreadingCovering, ground: GroundUnderPanel, position: PanelPosition): number => {
  const panelArea = covering.panelWidth ** 2;
  const rigid = panelArea > 0 ? Math.min(1, (tilt[position] * area) / panelArea) : 0;
  if (covering.spread === 'rigid-pad') return panelArea > 0 ? rigid : 1;
  const modulus = 1000 * standingModulus(covering.modulus, ground.standingHours, ground.creep);
  if (covering.spread === 'none' || !(modulus * covering.thickness > 0)) return 1;
  if (covering.spread === 'plate') {
    const l = plateLength(modulus, covering.thickness, ground);
    return Math.max(rigid, plateShare(Math.sqrt(area / Math.PI) / l, position, ground.poisson));
  }
  const side = Math.sqrt(area);
  const width = Math.max(covering.panelWidth, side);
  const lambda = ((3 * ground.springs) / (modulus * covering.thickness ** 3)) ** 0.25;
  return (side / width) * beamShare(lambda, side / 2, position);
};

/** l in m of a panel of `modulus` kPa. */
const plateLength = (modulus: number, thickness: number, ground: GroundUnderPanel): number =>
  ((modulus * thickness ** 3) / (12 * (1 - ground.poisson ** 2) * ground.springs)) ** 0.25;

export interface PlacedLoad {
  /** kN */
  readonly load: number;
  /** m² */
  readonly area: number;
  /** m */
  readonly x: number;
  /** m */
  readonly y: number;
}

/**
 * The peak under each of several loads that stand on the same covering. On a plate each feels its neighbours by superposition,
 * −(P/(2π l²)) kei(r/l), raised at an edge or corner by the same ratio as its own; where a neighbour would lift the plate it is
 * not credited. Loads closer together than a panel is wide share its area in the rigid limit. Other coverings do not carry from one
 * load to the next. The pressure of one spot never exceeds the largest contact pressure of the group.
 */
export const pressuresUnder = (
  loads: readonly PlacedLoad[],
  covering: SpreadingCovering,
  ground: GroundUnderPanel,
  position: PanelPosition,
): readonly SpreadLoad[] => {
  const own = loads.map(({ load, area }) => pressureUnder(load, area, covering, ground, position));
  const modulus = 1000 * standingModulus(covering.modulus, ground.standingHours, ground.creep);
  if (loads.length < 2 || covering.spread !== 'plate' || !(modulus * covering.thickness > 0)) return own;
  const l = plateLength(modulus, covering.thickness, ground);
  const highest = Math.max(0, ...loads.map(({ load, area }) => load / area));
  return loads.map((here, i) => {
    const s = Math.sqrt(here.area / Math.PI) / l;
    const share = plateShare(s, position, ground.poisson);
    const raised = share / plateShare(s, 'interior', ground.poisson);
    let bending = (here.load / here.area) * share;
    let onPanel = tilt[position] * here.load;
    loads.forEach((there, j) => {
      if (i === j) return;
      const distance = Math.hypot(here.x - there.x, here.y - there.y);
      if (distance < 9 * l) bending += raised * Math.max(0, (-there.load / (2 * Math.PI * l * l)) * kei(distance / l));
      if (distance < covering.panelWidth) onPanel += there.load;
    });
    const rigid = covering.panelWidth > 0 ? onPanel / covering.panelWidth ** 2 : 0;
    const peak = Math.max(own[i]!.peak, Math.min(highest, Math.max(bending, rigid)));
    return { peak, radius: here.load > 0 ? Math.sqrt(here.load / (Math.PI * peak)) : own[i]!.radius };
  });
};
