/** A corner as shares of width and height from the top left. */
export type Corner = readonly [number, number];

/** Smallest frame, as a share of the picture. */
const smallestFrame = 0.01;

/**
 * The pixels inside a quadrat frame, row by row: pairs of first column and column behind the last. A pixel is inside when its middle is.
 * Without a frame every row is whole.
 * @param corners in turn, either way round
 * @throws RangeError with field `frame` where the corners cross or enclose next to nothing
 */
export const quadratRows = (width: number, height: number, corners: readonly Corner[] | null): Int32Array => {
  const rows = new Int32Array(height * 2);
  if (corners === null) {
    for (let row = 0; row < height; row++) rows[row * 2 + 1] = width;
    return rows;
  }
  refuseCrossed(corners);
  for (let row = 0; row < height; row++) {
    const y = (row + 0.5) / height;
    let [from, until] = [Infinity, -Infinity];
    corners.forEach(([x1, y1], index) => {
      const [x2, y2] = corners[(index + 1) % corners.length]!;
      if (y1 <= y === y2 <= y) return;
      const x = x1 + ((y - y1) / (y2 - y1)) * (x2 - x1);
      from = Math.min(from, x);
      until = Math.max(until, x);
    });
    if (until <= from) continue;
    rows[row * 2] = Math.max(0, Math.ceil(from * width - 0.5));
    rows[row * 2 + 1] = Math.min(width, Math.ceil(until * width - 0.5));
  }
  return rows;
};

/** A frame seen through a lens is convex: all turns go the same way. */
const refuseCrossed = (corners: readonly Corner[]): void => {
  const turns = corners.map((corner, index) => {
    const [next, after] = [corners[(index + 1) % corners.length]!, corners[(index + 2) % corners.length]!];
    return (next[0] - corner[0]) * (after[1] - next[1]) - (next[1] - corner[1]) * (after[0] - next[0]);
  });
  if (!turns.every((turn) => turn >= 0) && !turns.every((turn) => turn <= 0))
    throw Object.assign(new RangeError('the corners must go round the frame in turn, without a dent'), { field: 'frame' });
  const twice = corners.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = corners[(index + 1) % corners.length]!;
    return sum + x * nextY - nextX * y;
  }, 0);
  if (Math.abs(twice) / 2 < smallestFrame)
    throw Object.assign(new RangeError('the frame must hold at least a hundredth of the picture'), { field: 'frame' });
};
