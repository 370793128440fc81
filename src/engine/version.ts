/** Raised with every change that can move a forecast's numbers; frozen runs carry it. */
export const engineVersion = '1.2.0';
