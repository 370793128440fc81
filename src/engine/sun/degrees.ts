/** Trigonometry in degrees, the unit of every angle the engine hands out. */
const perDegree = Math.PI / 180;

export const toRadians = (degrees: number): number => degrees * perDegree;
export const toDegrees = (radians: number): number => radians / perDegree;
export const sinOf = (degrees: number): number => Math.sin(degrees * perDegree);
export const cosOf = (degrees: number): number => Math.cos(degrees * perDegree);
export const tanOf = (degrees: number): number => Math.tan(degrees * perDegree);

/** Keeps a sine or cosine that rounding pushed over the edge inside −1 to 1. */
export const unit = (value: number): number => Math.min(1, Math.max(-1, value));

/** The same direction in 0 ≤ angle < 360. */
export const wrapTo360 = (degrees: number): number => {
  const wrapped = ((degrees % 360) + 360) % 360;
  return wrapped === 360 ? 0 : wrapped;
};

/** The same direction in −180 ≤ angle < 180. */
export const wrapTo180 = (degrees: number): number => wrapTo360(degrees + 180) - 180;
