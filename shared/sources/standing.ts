/**
 * How far a number can be trusted. The same five words stand in the code, in the catalogue and on the screen.
 *
 * - `published`: printed in the named source.
 * - `derived`: arithmetic from published values that are named beside it.
 * - `recalled`: a source is named but the value was not checked against it. An editable default, never a test's truth.
 * - `common practice`: a rule of the trade without a source. An editable default.
 * - `our assumption`: a starting value without evidence. An editable default.
 */
export const standings = ['published', 'derived', 'recalled', 'common practice', 'our assumption'] as const;
export type Standing = (typeof standings)[number];
