/**
 * Points and weights of 16-point Gauss–Legendre integration on −1…1, found once by Newton's method on the Legendre polynomial.
 *
 * @source abramowitz-stegun-1964
 */
const order = 16;

const legendre = (x: number): readonly [value: number, slope: number] => {
  let before = 1;
  let value = x;
  for (let n = 2; n <= order; n++) {
    const next = ((2 * n - 1) * x * value - (n - 1) * before) / n;
    before = value;
    value = next;
  }
  return [value, (order * (x * value - before)) / (x * x - 1)];
};

const points = new Float64Array(order);
const weights = new Float64Array(order);
for (let i = 0; i < order; i++) {
  let x = Math.cos((Math.PI * (i + 0.75)) / (order + 0.5));
  for (let step = 0; step < 50; step++) {
    const [value, slope] = legendre(x);
    const change = value / slope;
    x -= change;
    if (Math.abs(change) < 1e-16) break;
  }
  const slope = legendre(x)[1];
  points[i] = x;
  weights[i] = 2 / ((1 - x * x) * slope * slope);
}

export const gaussPoints: Readonly<Float64Array> = points;
export const gaussWeights: Readonly<Float64Array> = weights;
