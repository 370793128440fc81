import type { Model } from '#planner/optimiser.ts';

/** A model while it is being written down. */
export interface LinearModel {
  /** Adds a column and returns its number. */
  column(cost: number, lower: number, upper: number, integer: boolean): number;
  /** Adds `lower ≤ Σ value·column ≤ upper`. Entries on the same column are added up; zeros are dropped. Returns its number. */
  row(lower: number, upper: number, entries: Iterable<readonly [column: number, value: number]>): number;
  /** Changes the price of a column. */
  price(column: number, cost: number): void;
  /** Changes the bounds of a column. */
  bound(column: number, lower: number, upper: number): void;
  readonly columnCount: number;
  readonly rowCount: number;
  build(): Model;
}

/** An empty model. */
export const linearModel = (): LinearModel => {
  const cost: number[] = [];
  const lower: number[] = [];
  const upper: number[] = [];
  const integer: number[] = [];
  const rowLower: number[] = [];
  const rowUpper: number[] = [];
  const starts: number[] = [0];
  const indices: number[] = [];
  const values: number[] = [];
  return {
    column(price, low, high, whole) {
      cost.push(price);
      lower.push(low);
      upper.push(high);
      integer.push(whole ? 1 : 0);
      return cost.length - 1;
    },
    row(low, high, entries) {
      const sums = new Map<number, number>();
      for (const [column, value] of entries) sums.set(column, (sums.get(column) ?? 0) + value);
      for (const [column, value] of sums) {
        if (value === 0) continue;
        indices.push(column);
        values.push(value);
      }
      starts.push(indices.length);
      rowLower.push(low);
      rowUpper.push(high);
      return rowLower.length - 1;
    },
    price(column, value) {
      cost[column] = value;
    },
    bound(column, low, high) {
      lower[column] = low;
      upper[column] = high;
    },
    get columnCount() {
      return cost.length;
    },
    get rowCount() {
      return rowLower.length;
    },
    build: () => ({
      columns: {
        cost: Float64Array.from(cost),
        lower: Float64Array.from(lower),
        upper: Float64Array.from(upper),
        integer: Uint8Array.from(integer),
      },
      rows: {
        lower: Float64Array.from(rowLower),
        upper: Float64Array.from(rowUpper),
        starts: Int32Array.from(starts),
        indices: Int32Array.from(indices),
        values: Float64Array.from(values),
      },
    }),
  };
};
