import { contains } from '#shared/geometry/polygon.ts';
import { crossings } from '#engine/stands/blocks.ts';
import type { Block, RoofSlab } from '#engine/stands/blocks.ts';
import type { Polygon } from '#shared/vocabulary/geometry.ts';

/**
 * What each spot on the field sees of the sky, in equal bins of direction. Bin k of n looks along φ = (k + ½)·360/n degrees
 * clockwise from the field's +y axis. Per bin one horizon (the highest block decides; raked stands need no more) and, above it,
 * bands hidden by roofs. Heights are kept as tangents of elevation: height over distance, Infinity straight up.
 */
export type Horizons = {
  readonly bins: number;
  readonly count: number;
  /** Tangent of the horizon's elevation at [spot·bins + bin]; Infinity inside a block. */
  readonly tangent: Float64Array;
  /** Tangent of the lowest roof band at [spot·bins + bin], Infinity where there is none; null where no roof is seen by anybody. */
  readonly clearUntil: Float64Array | null;
  /** Bands of [spot·bins + bin] run from bandStart[that] to bandStart[that + 1]; empty where no roof is seen by anybody. */
  readonly bandStart: Int32Array;
  readonly bandLow: Float64Array;
  readonly bandHigh: Float64Array;
  /** Share of light passed by the band. Bands of one bin do not overlap. */
  readonly bandPass: Float64Array;
};

/**
 * Unit vectors of the bins. Mirrored bins get exactly mirrored vectors, so that rounding cannot tell left from right.
 * @throws RangeError where the number of bins is not a multiple of 4 from 8 to 3600
 */
export const binDirections = (bins: number): { dx: Float64Array; dy: Float64Array } => {
  if (!Number.isInteger(bins) || bins % 4 !== 0 || bins < 8 || bins > 3600)
    throw new RangeError(`azimuth bins: ${bins} is not a multiple of 4 from 8 to 3600`);
  const dx = new Float64Array(bins);
  const dy = new Float64Array(bins);
  for (let k = 0; k < bins / 4; k++) {
    const angle = ((k + 0.5) * 2 * Math.PI) / bins;
    const [s, c] = [Math.sin(angle), Math.cos(angle)];
    const opposite = bins / 2 - 1 - k;
    dx[k] = dx[opposite] = s;
    dy[k] = c;
    dy[opposite] = -c;
    dx[bins - 1 - k] = dx[bins - 1 - opposite] = -s;
    dy[bins - 1 - k] = c;
    dy[bins - 1 - opposite] = -c;
  }
  return { dx, dy };
};

/** The bin that looks along an azimuth in the field's axes, °. */
export const binOf = (fieldAzimuth: number, bins: number): number => {
  const k = Math.floor(((((fieldAzimuth % 360) + 360) % 360) * bins) / 360);
  return k >= bins ? 0 : k;
};

/** @param x @param y spots on the field, m; @param bins a multiple of 4 */
export const horizonsOf = (
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  blocks: readonly Block[],
  roofs: readonly RoofSlab[],
  bins: number,
): Horizons => {
  const count = x.length;
  const directions = binDirections(bins);
  const tangent = new Float64Array(count * bins);
  for (let spot = 0; spot < count; spot++)
    for (const block of blocks) raiseHorizon(tangent, spot * bins, x[spot]!, y[spot]!, block, bins, directions);
  return { bins, count, tangent, ...bandsOf(x, y, roofs, bins, directions, tangent) };
};

type Directions = { dx: Float64Array; dy: Float64Array };

/** Raises one spot's horizon to where a block stands. Each edge is tried only in the bins it spans, one more on either side. */
const raiseHorizon = (
  tangent: Float64Array,
  base: number,
  x: number,
  y: number,
  block: Block,
  bins: number,
  { dx, dy }: Directions,
): void => {
  const ring = block.outline;
  if (contains(ring, x, y)) {
    tangent.fill(Infinity, base, base + bins);
    return;
  }
  let bx = ring.at(-1)![0] - x;
  let by = ring.at(-1)![1] - y;
  let bAngle = Math.atan2(bx, by);
  for (const corner of ring) {
    const [ax, ay, aAngle] = [bx, by, bAngle];
    bx = corner[0] - x;
    by = corner[1] - y;
    bAngle = Math.atan2(bx, by);
    let turn = bAngle - aAngle;
    if (turn > Math.PI) turn -= 2 * Math.PI;
    if (turn < -Math.PI) turn += 2 * Math.PI;
    const from = Math.floor(((turn >= 0 ? aAngle : aAngle + turn) * bins) / (2 * Math.PI) - 0.5) - 1;
    const until = Math.ceil(((turn >= 0 ? aAngle + turn : aAngle) * bins) / (2 * Math.PI) - 0.5) + 1;
    for (let bin = from; bin <= until; bin++) {
      const k = ((bin % bins) + bins) % bins;
      const aSide = dx[k]! * ay - dy[k]! * ax;
      const bSide = dx[k]! * by - dy[k]! * bx;
      if (aSide >= 0 === bSide >= 0) continue;
      const along = dx[k]! * ax + dy[k]! * ay + ((dx[k]! * (bx - ax) + dy[k]! * (by - ay)) * aSide) / (aSide - bSide);
      if (along < 0) continue;
      const rise = block.height / along;
      if (rise > tangent[base + k]!) tangent[base + k] = rise;
    }
  }
};

type Bands = Pick<Horizons, 'clearUntil' | 'bandStart' | 'bandLow' | 'bandHigh' | 'bandPass'>;

const bandsOf = (
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  roofs: readonly RoofSlab[],
  bins: number,
  { dx, dy }: Directions,
  tangent: Float64Array,
): Bands => {
  const none = new Float64Array(0);
  if (roofs.length === 0)
    return { clearUntil: null, bandStart: new Int32Array(0), bandLow: none, bandHigh: none, bandPass: none };
  const bandStart = new Int32Array(tangent.length + 1);
  const clearUntil = new Float64Array(tangent.length).fill(Infinity);
  const merged: Merged = { low: [], high: [], pass: [] };
  const raw = Array.from({ length: bins }, (): Band[] => []);
  const found: number[] = [];
  for (let spot = 0; spot < x.length; spot++) {
    for (const roof of roofs) {
      const span = binSpan(roof.outline, x[spot]!, y[spot]!, bins);
      for (let bin = span.from; bin <= span.until; bin++) {
        const k = ((bin % bins) + bins) % bins;
        crossings(roof.outline, x[spot]!, y[spot]!, dx[k]!, dy[k]!, found);
        if (found.length > 0) roofBands(roof, found, tangent[spot * bins + k]!, raw[k]!);
      }
    }
    for (let k = 0; k < bins; k++) {
      const first = merged.low.length;
      mergeBands(raw[k]!, merged);
      raw[k]!.length = 0;
      bandStart[spot * bins + k + 1] = merged.low.length;
      if (merged.low.length > first) clearUntil[spot * bins + k] = merged.low[first]!;
    }
  }
  return {
    clearUntil,
    bandStart,
    bandLow: new Float64Array(merged.low),
    bandHigh: new Float64Array(merged.high),
    bandPass: new Float64Array(merged.pass),
  };
};

type Band = { readonly low: number; readonly high: number; readonly pass: number };

/** Bands of all bins end to end. */
type Merged = { readonly low: number[]; readonly high: number[]; readonly pass: number[] };

/** The bands a roof hides above a horizon, from where a ray crosses its outline. */
const roofBands = (roof: RoofSlab, found: number[], horizon: number, bands: Band[]): void => {
  if (found.length % 2 === 1) found.unshift(0);
  for (let i = 0; i + 1 < found.length; i += 2) {
    // A roof lying on the ground, seen from under it, hides everything: 0/0 stands for straight down.
    const low = found[i + 1] === 0 ? 0 : roof.underside / found[i + 1]!;
    const high = found[i] === 0 ? Infinity : roof.top / found[i]!;
    if (high > horizon) bands.push({ low: Math.max(low, horizon), high, pass: roof.transmission });
  }
};

/** The bins in which a ring is seen, one more on either side; all of them from inside. May run past the ends: take it modulo. */
const binSpan = (ring: Polygon, x: number, y: number, bins: number): { from: number; until: number } => {
  if (contains(ring, x, y)) return { from: 0, until: bins - 1 };
  let angle = Math.atan2(ring[0]![0] - x, ring[0]![1] - y);
  let [low, high] = [angle, angle];
  for (let i = 1; i < ring.length; i++) {
    let turn = Math.atan2(ring[i]![0] - x, ring[i]![1] - y) - angle;
    while (turn > Math.PI) turn -= 2 * Math.PI;
    while (turn < -Math.PI) turn += 2 * Math.PI;
    angle += turn;
    low = Math.min(low, angle);
    high = Math.max(high, angle);
  }
  const from = Math.floor((low * bins) / (2 * Math.PI) - 0.5) - 1;
  const until = Math.ceil((high * bins) / (2 * Math.PI) - 0.5) + 1;
  return until - from >= bins ? { from: 0, until: bins - 1 } : { from, until };
};

/** Turns overlapping bands into disjoint ones whose passes multiply, appended from the lowest up. */
const mergeBands = (raw: readonly Band[], merged: Merged): void => {
  const append = (low: number, high: number, pass: number): void => {
    merged.low.push(low);
    merged.high.push(high);
    merged.pass.push(pass);
  };
  if (raw.length === 1) append(raw[0]!.low, raw[0]!.high, raw[0]!.pass);
  if (raw.length < 2) return;
  const edges = [...new Set(raw.flatMap((band) => [band.low, band.high]))].sort((a, b) => a - b);
  for (let i = 0; i + 1 < edges.length; i++) {
    const [low, high] = [edges[i]!, edges[i + 1]!];
    let pass = 1;
    for (const band of raw) if (band.low <= low && band.high >= high) pass *= band.pass;
    if (pass < 1) append(low, high, pass);
  }
};

/** Share of beam that reaches a spot with the sun at a bin and a tangent of altitude: 0 at or below the horizon. */
export const beamPass = (horizons: Horizons, spot: number, bin: number, tanAltitude: number): number => {
  const at = spot * horizons.bins + bin;
  if (!(tanAltitude > horizons.tangent[at]!)) return 0;
  return horizons.clearUntil === null || tanAltitude < horizons.clearUntil[at]! ? 1 : roofPass(horizons, at, tanAltitude);
};

/** What the roofs pass at [spot·bins + bin] and a tangent of altitude above the horizon. */
export const roofPass = ({ bandStart, bandLow, bandHigh, bandPass }: Horizons, at: number, tanAltitude: number): number => {
  for (let band = bandStart[at]!; band < bandStart[at + 1]!; band++)
    if (tanAltitude >= bandLow[band]! && tanAltitude <= bandHigh[band]!) return bandPass[band]!;
  return 1;
};
