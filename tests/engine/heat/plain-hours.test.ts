import { expect, test } from 'vitest';
import { startingCoverings } from '#shared/parameters/coverings.ts';
import { openClimate, startClimate, straightProfile } from '#engine/heat/climate-column.ts';
import { runClimate } from '#engine/heat/climate.ts';
import { layOut, type ThermalCovering } from '#engine/heat/floor.ts';
import { isPlain } from '#engine/heat/plain-hours.ts';
import { dayWeather, hotJulyDay } from '#tests/engine/heat/hot-day.ts';
import { days, groundAt, settings } from '#tests/engine/heat/pitch.ts';

/* The plain hours are the general step worked out beforehand: a column that keeps its account takes the general step every hour. */

const crowns = (covering: ThermalCovering | null, shift: number, accounted: boolean): Float64Array => {
  const weather = days(dayWeather(hotJulyDay(41.6)), 8, shift);
  const hours = weather.air.length;
  const ground = groundAt(10 + shift / 2);
  const climate = openClimate(ground, settings, accounted);
  const floor = layOut(
    {
      stack: covering ? [covering] : [],
      loading: 'open',
      cleanliness: 0.9,
      iceTemperature: null,
      care: [],
      steps: hours,
      skyView: 0.7,
    },
    ground,
    settings,
  );
  expect(isPlain(floor.states[0]!)).toBe(true);
  startClimate(climate, straightProfile(ground, weather.air[0]!, 10 + shift / 2));
  const crown = new Float64Array(hours);
  runClimate(climate, floor, weather, 0, hours, crown, 1);
  return crown;
};

/** A hot week, a cool one, and one in which the ground freezes by night and thaws by day. */
const shifts = [0, -12, -24];

test.each([null, ...startingCoverings])('plain hours agree with the general step: $id', (covering) => {
  for (const shift of shifts) {
    const [plain, general] = [crowns(covering, shift, false), crowns(covering, shift, true)];
    plain.forEach((value, hour) => expect(Math.abs(value - general[hour]!), `${shift} K, hour ${hour}`).toBeLessThan(1e-4));
  }
  expect(Math.min(...crowns(covering, -24, true))).toBeLessThan(2);
});
