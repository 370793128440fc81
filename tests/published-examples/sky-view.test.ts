import { describe, expect, it } from 'vitest';
import type { Block } from '#engine/stands/blocks.ts';
import { horizonsOf } from '#engine/stands/horizon.ts';
import { meanRowMask, rowDiffuseLoss, rowMask } from '#engine/stands/row-shading.ts';
import { shadowLength } from '#engine/stands/shadow.ts';
import { skyViewOf, wallViewOf } from '#engine/stands/sky-view.ts';
import {
  basinSkyView,
  boxSkyView,
  canyonCentreSkyView,
  canyonFloorSkyView,
  canyonWallSkyView,
  cornerRectangleFactor,
  wallSkyView,
} from '#engine/stands/view-factors.ts';
import { toDegrees, toRadians } from '#engine/sun/degrees.ts';
import { noonAltitude } from '#engine/sky/clear-sky.ts';
import type { Point } from '#shared/vocabulary/geometry.ts';

const within = (value: number, printed: number, tolerance: number) =>
  expect(Math.abs(value - printed), `${value} against ${printed}`).toBeLessThanOrEqual(tolerance);

const rectangle = (left: number, bottom: number, right: number, top: number): Point[] => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];
/** Sky view at the origin with bins of one degree. */
const viewAmong = (...blocks: Block[]): number => skyViewOf(horizonsOf([0], [0], blocks, [], 360))[0]!;
/** Four walls as four blocks, the spot at the origin. */
const box = (height: number, left: number, right: number, front: number, back: number): Block[] => [
  { outline: rectangle(-left - 5, -back - 5, -left, front + 5), height },
  { outline: rectangle(right, -back - 5, right + 5, front + 5), height },
  { outline: rectangle(-left, front, right, front + 5), height },
  { outline: rectangle(-left, -back - 5, right, -back), height },
];
const far = 1e6;

/** Oke 1981, 1987; Johnson & Watson 1984; Dozier & Frew 1990; Harman 2004; Howell's catalogue: identities, values derived. */
describe('sky view in closed form and by profile', () => {
  it.each([
    [10, 0.9698],
    [20, 0.883],
    [25, 0.8214],
    [30, 0.75],
    [35, 0.671],
    [45, 0.5],
    [60, 0.25],
  ])('round basin with horizon %i°', (h, value) => {
    within(basinSkyView(h), value, 5e-5);
    // A ring of 720 corners, cut open where it must be to stay one simple polygon.
    const ring = (radius: number) =>
      Array.from({ length: 721 }, (_, i): Point => {
        const angle = toRadians(i / 2 - (i === 720 ? 1e-7 : 0));
        return [radius * Math.sin(angle), radius * Math.cos(angle)];
      });
    const outline = [...ring(100), ...ring(110).reverse()];
    within(viewAmong({ outline, height: 100 * Math.tan(toRadians(h)) }), value, 0.001);
  });
  it.each([
    [30, 0.933],
    [45, 0.8536],
    [60, 0.75],
  ])('endless wall on one side with horizon %i°', (h, value) => {
    within(wallSkyView(h), value, 5e-5);
    within(viewAmong({ outline: rectangle(10, -far, 20, far), height: 10 * Math.tan(toRadians(h)) }), value, 0.001);
  });
  it.each([
    [0.25, 0.894],
    [0.5, 0.707],
    [1, 0.447],
    [1.5, 0.316],
    [2, 0.243],
    [3, 0.164],
    [4, 0.124],
  ])('middle of an endless canyon, H/W %d', (ratio, value) => {
    within(canyonCentreSkyView(ratio), value, 5e-4);
    const walls = [-1, 1].map((side): Block => ({
      outline: rectangle(side * 15 - 5, -far, side * 15 + 5, far),
      height: 20 * ratio,
    }));
    within(viewAmong(...walls), canyonCentreSkyView(ratio), 0.001);
  });
  it.each([
    [0.5, 0.618, 0.382],
    [1, 0.414, 0.293],
    [2, 0.236, 0.191],
  ])('means of an endless canyon, H/W %d', (ratio, floor, wall) => {
    within(canyonFloorSkyView(ratio), floor, 5e-4);
    within(canyonWallSkyView(ratio), wall, 5e-4);
    within(canyonFloorSkyView(ratio) + 2 * ratio * canyonWallSkyView(ratio), 1, 1e-6);
    // The floor's mean by profile over 200 spots across.
    const x = Array.from({ length: 200 }, (_, i) => (i + 0.5) / 10 - 10);
    const walls = [-1, 1].map((side): Block => ({
      outline: rectangle(side * 15 - 5, -far, side * 15 + 5, far),
      height: 20 * ratio,
    }));
    const view = skyViewOf(
      horizonsOf(
        x,
        x.map(() => 0),
        walls,
        [],
        360,
      ),
    );
    within(view.reduce((sum, value) => sum + value, 0) / 200, canyonFloorSkyView(ratio), 0.001);
  });
  it('upright rectangle from the foot of its corner', () => {
    within(cornerRectangleFactor(1, 1, 1), 0.055734, 5e-7);
    within(2 * cornerRectangleFactor(1, Infinity, 1), 0.146447, 5e-7);
    within(2 * cornerRectangleFactor(1, 1e7, 1), (1 - Math.cos(toRadians(45))) / 2, 1e-6);
  });
  it('rectangular bowl of 30 m at 45, 45, 65 and 65 m', () => {
    within(boxSkyView(30, 45, 45, 65, 65), 0.78882, 5e-6);
    within(viewAmong(...box(30, 45, 45, 65, 65)), 0.78882, 0.001);
    within(skyViewOf(horizonsOf([0], [0], box(30, 45, 45, 65, 65), [], 3600))[0]!, 0.78882, 2e-5);
  });
  it.each([
    [20, 10, 60, 30, 90],
    [35, 5, 85, 64, 66],
    [12, 40, 40, 8, 120],
  ])('other bowls by rectangles and by profile: %d m at %d, %d, %d, %d', (height, left, right, front, back) => {
    within(viewAmong(...box(height, left, right, front, back)), boxSkyView(height, left, right, front, back), 0.001);
  });
  it('sky and walls together are everything', () => {
    const horizons = horizonsOf([0, 20, -30], [0, 40, -50], box(30, 45, 45, 65, 65), [], 360);
    const [sky, wall] = [skyViewOf(horizons), wallViewOf(horizons)];
    sky.forEach((view, spot) => within(view + wall[spot]!, 1, 1e-6));
  });
  it('is weighed by the cosine: a basin of 30° leaves 0.75 of the light, not 0.50', () => {
    expect(basinSkyView(30)).toBeCloseTo(0.75, 12);
    expect(1 - Math.sin(toRadians(30))).toBeCloseTo(0.5, 12);
  });
});

/** A 30 m stand at solar noon (derived: solstices at ±23.45°). */
describe('length of a shadow', () => {
  it.each([
    [40, -23.45, 60.0],
    [40, 0, 25.2],
    [40, 23.45, 8.9],
    [51.5, -23.45, 111.6],
    [51.5, 0, 37.7],
    [33.6, -23.45, 46.3],
  ])('at %d N with declination %d', (latitude, declination, printed) =>
    within(shadowLength(30, noonAltitude(latitude, declination)), printed, 0.1),
  );
  it('has no end at sunset', () => expect(shadowLength(30, 0)).toBe(Infinity));
});

/** Passias & Källbäck 1984, values in the test suite of pvlib-python; ground cover 0.5. */
describe('rows that shade each other', () => {
  it.each([
    [20, 11.20223712],
    [90, 20.55604522],
  ])('mask at a quarter of the slant, tilt %i', (tilt, printed) => within(rowMask(0.5, tilt, 0.25), printed, 1e-6));
  it.each([
    [20, 7.20980655, 0.00395338],
    [90, 13.779867461, 0.01439098],
  ])('mean mask and loss, tilt %i', (tilt, mask, loss) => {
    within(meanRowMask(0.5, tilt), mask, 1e-6);
    within(rowDiffuseLoss(meanRowMask(0.5, tilt)), loss, 1e-6);
  });
  it('a row lying flat hides nothing', () => expect(toDegrees(rowMask(0.5, 0, 0.5))).toBe(0));
});
