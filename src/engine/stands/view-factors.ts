import { cosOf } from '#engine/sun/degrees.ts';

/**
 * Sky view in closed form for shapes simple enough to have one. The profile by bins must agree with every one of them.
 * Angles in °, lengths in any one unit.
 */

/** Even horizon h all round (a round basin): cos² h. @source oke-1987 */
export const basinSkyView = (horizon: number): number => cosOf(horizon) ** 2;

/** Endless wall on one side with horizon h: (1 + cos h)/2. @source johnson-watson-1984 */
export const wallSkyView = (horizon: number): number => (1 + cosOf(horizon)) / 2;

/** Middle of the floor of an endless canyon, ratio H/W of height to width: cos(atan(2H/W)). @source oke-1981 */
export const canyonCentreSkyView = (ratio: number): number => Math.cos(Math.atan(2 * ratio));

/** Mean over the floor of an endless canyon: √(1 + (H/W)²) − H/W. @source harman-2004 */
export const canyonFloorSkyView = (ratio: number): number => Math.sqrt(1 + ratio * ratio) - ratio;

/** Mean over one wall of an endless canyon: ½(1 + H/W − √(1 + (H/W)²))/(H/W). @source harman-2004 */
export const canyonWallSkyView = (ratio: number): number => (0.5 * (1 + ratio - Math.sqrt(1 + ratio * ratio))) / ratio;

/**
 * From a level element to an upright rectangle that rises from its own level, the foot of one lower corner nearest to it:
 *
 *   F = (1/2π)[atan(1/Y) − Y/√(X² + Y²) · atan(1/√(X² + Y²))],   X = a/b, Y = c/b
 *
 * @param height a; @param width b, may be Infinity; @param distance c, above 0
 * @source howell-catalog
 */
export const cornerRectangleFactor = (height: number, width: number, distance: number): number => {
  // For an endless width Y → 0, Y/√(X² + Y²) → c/√(a² + c²) and both arcs → π/2.
  if (width === Infinity) return (1 - distance / Math.hypot(height, distance)) / 4;
  const x = height / width;
  const y = distance / width;
  const slant = Math.hypot(x, y);
  return (Math.atan(1 / y) - (y / slant) * Math.atan(1 / slant)) / (2 * Math.PI);
};

/**
 * A spot on the floor of a box with upright walls of one height: 1 less the view of its eight corner rectangles.
 * @param height of the walls; @param left @param right @param front @param back distances to the four walls
 */
export const boxSkyView = (height: number, left: number, right: number, front: number, back: number): number => {
  let walls = 0;
  for (const across of [left, right])
    for (const along of [front, back])
      walls += cornerRectangleFactor(height, along, across) + cornerRectangleFactor(height, across, along);
  return 1 - walls;
};
