/** Exact SI values of the customary units the trade's tables are printed in. */
export const inch = 0.0254;
export const foot = 0.3048;
export const squareFoot = foot * foot;
export const cubicFoot = foot * foot * foot;
export const cubicYard = 27 * cubicFoot;
/** kg */
export const pound = 0.45359237;
/** kg; 2,000 lb */
export const shortTon = 2000 * pound;
/** kg/m³ for one lb/ft³ */
export const poundPerCubicFoot = pound / cubicFoot;
/** kg/m² for one lb/ft² */
export const poundPerSquareFoot = pound / squareFoot;
/** kg/m² for one lb per 1,000 ft² */
export const poundPer1000SquareFeet = pound / (1000 * squareFoot);

export const celsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;

/** Counts whole things: the next whole number up, except that a hair above one from floating point is that one. Never below 0. */
export const wholeNumberUp = (amount: number): number => Math.max(0, Math.ceil(amount - 1e-9 * Math.max(1, Math.abs(amount))));
