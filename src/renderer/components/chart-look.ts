/**
 * What charts share. Kept as one object each: a chart that is handed a new object works its axes out again, which while something is
 * dragged costs more than all the rest of it.
 */
export const tickLook = { fontSize: 10, fill: 'currentColor' };
