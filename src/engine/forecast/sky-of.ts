import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import type { LocalDate } from '#shared/vocabulary/primitives.ts';
import type { Place } from '#shared/vocabulary/venue.ts';
import { lastFew } from '#shared/last-few.ts';
import { dayShape, type DayShape } from '#engine/sky/day-shape.ts';
import type { Bowl } from '#engine/stands/bowl.ts';
import { classLight, shadeClasses, type ClassLight, type ShadeClasses } from '#engine/stands/shade-classes.ts';

/** The sun of a stretch of days and what each class of shade gets of it. */
export interface Sky {
  /** One per day. */
  readonly shapes: readonly DayShape[];
  readonly shade: ShadeClasses;
  readonly light: ClassLight;
}

/** Days between those that tell the classes of shade apart. */
const describingStep = 14;

/**
 * The sky of a bowl over some days. It depends on nothing that is booked, so the last few are kept: a stage that is dragged about, and
 * options side by side, share one.
 * @param keep how many to hold
 */
export const skyKeeper = (keep = 4) => {
  const held = lastFew<Sky>(keep);
  const bowls = new WeakMap<Bowl, number>();
  let last = 0;
  return (bowl: Bowl, place: Place, days: readonly LocalDate[], parameters: ParameterValues): Sky => {
    if (!bowls.has(bowl)) bowls.set(bowl, ++last);
    const step = parameters['light.sunStep'];
    const constant = parameters['light.solarConstant'];
    const classes = Math.round(parameters['forecast.shadeClasses']);
    const where = [place.latitude, place.longitude, place.timeZone];
    const key = JSON.stringify([bowls.get(bowl), where, days[0], days.length, step, constant, classes]);
    return held(key, () => skyOf(bowl, place, days, step, constant, classes));
  };
};

const skyOf = (bowl: Bowl, place: Place, days: readonly LocalDate[], step: number, constant: number, classes: number): Sky => {
  const shapes = days.map((day) => dayShape(day, place, step, constant));
  const shade = shadeClasses(
    bowl,
    shapes.filter((_, day) => day % describingStep === 0),
    classes,
  );
  return { shapes, shade, light: classLight(bowl, shade, shapes) };
};
