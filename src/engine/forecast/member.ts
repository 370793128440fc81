import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import { seasonOf, type Season } from '#shared/vocabulary/turf.ts';
import { doubtsOf } from '#engine/forecast/doubts.ts';
import { type Draw, drawsOf } from '#engine/forecast/draw-parameters.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import type { Scene } from '#engine/forecast/scene.ts';
import type { HourlyWeather } from '#engine/heat/climate-column.ts';
import { skyEmissivity } from '#engine/heat/sky-radiation.ts';
import { usefulLightOfHalfSine } from '#engine/light/useful-light.ts';
import { gainWarmth, lossAt, reserveRates, type ReserveRates } from '#engine/injury/reserve-rates.ts';
import { growthPotential } from '#engine/recovery/growth-potential.ts';
import { sidesOf, type Side } from '#engine/recovery/overseeded.ts';
import { turfTraitsOfSward, type TurfTraits } from '#engine/recovery/turf-traits.ts';
import { spreadOverHours } from '#engine/sky/day-shape.ts';
import { clearSkyRadiation, extraterrestrialRadiation, type DailySite } from '#engine/weather/daily-radiation.ts';
import { generatedWeather } from '#engine/weather/generated-weather.ts';
import { hourlyShape, dayBetween } from '#engine/weather/hourly-shape.ts';
import { emptyHours, fillHours } from '#engine/weather/hours-of-day.ts';
import { forecastSpread, withActuals, withForecast } from '#engine/weather/near-term.ts';
import { normalSeasonOf } from '#engine/weather/normal-season.ts';
import { membersFromYears } from '#engine/weather/observed-years.ts';
import type { WeatherSeries } from '#engine/weather/weather-day.ts';
import { modelKeeper, type WeatherModel } from '#engine/weather/weather-model.ts';
import { fillReferenceEvapotranspiration } from '#engine/water/reference-evapotranspiration.ts';

/** The usual season, or one that could be: its weather, its values, and the light of each class of shade. */
export interface Member {
  readonly values: ParameterValues;
  /** The grass and how it stands at first; of the base where the turf is overseeded. */
  readonly side: Side;
  /** The same season for the grass sown into warm-season turf, which shares its ground, weather and floors; null where there is none. */
  readonly overseed: Member | null;
  readonly traits: TurfTraits;
  readonly weather: WeatherSeries;
  /** Mean air temperature of each day, and soil at 50 mm in the open, °C. */
  readonly air: Float64Array;
  readonly soil: Float64Array;
  /** Gain and loss of the reserve; by open day, the share of the gain its warmth allows, and the loss, 1/d. */
  readonly rates: ReserveRates;
  readonly openWarmth: Float64Array;
  readonly openLoss: Float64Array;
  /** Water the turf would use in the open, mm/d. */
  readonly demand: Float64Array;
  /** Useful light in the open of each class and day, mol/m²/d, at [class·days + day]; lamps not counted. */
  readonly useful: Float64Array;
  /** Beam and diffuse on open ground by hour of the covered window, MJ/m² in the hour. */
  readonly beam: Float64Array;
  readonly diffuse: Float64Array;
  /** Weather by hour of the covered window; its `sun` is filled for each class as it is needed. */
  readonly hours: SkyHours;
}

/** Growth potential at a temperature, 0–1; of whichever stand of overseeded turf grows better. */
export const growthOf = ({ traits, overseed }: Member, temperature: number): number =>
  Math.max(growthPotential(temperature, traits.growth), overseed ? growthOf(overseed, temperature) : 0);

/** Hours of weather with the sky's emissivity worked out, since every floor asks for it. */
export interface SkyHours extends HourlyWeather {
  readonly emissivity: Float64Array;
}

/** The hours in which something lies, with the hours before that settle the soil. */
export interface Window {
  readonly firstDay: number;
  /** Day after the last. */
  readonly lastDay: number;
  /** First hour, from the beginning of the period, and how many there are. */
  readonly from: number;
  readonly hours: number;
}

export const windowOf = ({ period, coveredHours, question }: Scene): Window => {
  if (coveredHours === null) return { firstDay: 0, lastDay: 0, from: 0, hours: 0 };
  const start = Math.max(0, coveredHours.from - question.parameters['forecast.spinUp']);
  const days = period.days.length;
  let firstDay = 0;
  while (firstDay + 1 < days && period.firstHour[firstDay + 1]! <= start) firstDay++;
  let lastDay = firstDay;
  while (lastDay < days && period.firstHour[lastDay]! < coveredHours.until) lastDay++;
  const from = period.firstHour[firstDay]!;
  return { firstDay, lastDay, from, hours: period.firstHour[lastDay]! - from };
};

/** What members share: the climate's model, the observed years, the window. */
export interface MemberMaker {
  readonly scene: Scene;
  readonly window: Window;
  readonly model: WeatherModel;
  readonly site: DailySite;
  readonly observed: readonly WeatherSeries[];
  readonly draw: Draw;
}

const models = modelKeeper();

export const memberMaker = (scene: Scene): MemberMaker => {
  const { question, period } = scene;
  const site = { latitude: question.venue.place.latitude, elevation: question.venue.place.elevation };
  const { members } = membersFromYears(
    question.observed,
    period.days[0]!,
    period.days.length,
    question.draws?.from ?? question.members,
    question.seed,
  );
  return {
    scene,
    window: windowOf(scene),
    model: models(question.venue.climate, site, question.parameters),
    site,
    observed: members.map((member) => member.series),
    draw: drawsOf(question.parameters, question.seed, doubtsOf(question)),
  };
};

/** The usual season of the venue with the venue's own values, without chance. */
export const usualMember = (maker: MemberMaker): Member => {
  const { scene, model } = maker;
  const { period, question } = scene;
  const usual = normalSeasonOf(model, period.days[0]!, period.days.length);
  return memberOf(maker, question.parameters, known(maker, usual, null));
};

/** Member `place` of the run: drawn weather, drawn values. */
export const drawnMember = (maker: MemberMaker, place: number): Member => {
  const { scene, model, observed } = maker;
  const { period, question } = scene;
  const index = question.draws?.index[place] ?? place;
  const series = observed[index] ?? generatedWeather(model, period.days[0]!, period.days.length, question.seed, index);
  return memberOf(maker, maker.draw(index), known(maker, series, index));
};

/** What is known better than the season: days expected next, then days logged. */
const known = ({ scene, site }: MemberMaker, series: WeatherSeries, member: number | null): WeatherSeries => {
  const { expected, actual, seed, parameters }: ForecastQuestion = scene.question;
  const ahead =
    expected.length === 0
      ? series
      : withForecast(series, expected, site, parameters, member === null ? null : forecastSpread(parameters), seed, member ?? 0);
  return actual.length === 0 ? ahead : withActuals(ahead, actual);
};

const memberOf = (maker: MemberMaker, values: ParameterValues, weather: WeatherSeries): Member => {
  const { scene, window, site } = maker;
  const { field } = scene.question.venue;
  const { base, overseed } = sidesOf(field.sward, field.usual);
  const season = seasonOf(field.sward[0]!.grass);
  const air = weather.maximum.map((high, day) => (high + weather.minimum[day]!) / 2);
  const demand = fillReferenceEvapotranspiration(weather, site);
  for (let day = 0; day < weather.days; day++) demand[day]! *= values[`water.cropCoefficient.${season}`];
  const hours = blankHours(window.hours);
  const beam = new Float64Array(window.hours);
  const diffuse = new Float64Array(window.hours);
  fillAir(maker, values, weather, hours);
  const soil = followedBySoil(air, values['forecast.soilLag']);
  const growing = (side: Side): Member => {
    const traits = turfTraitsOfSward(values, side.sward);
    const rates = reserveRates(traits.reserve);
    const useful = new Float64Array(scene.light.classes * weather.days);
    fillLight(maker, values, weather, seasonOf(side.sward[0]!.grass), useful, beam, diffuse);
    return {
      values,
      side,
      overseed: null,
      traits,
      weather,
      air,
      soil,
      rates,
      openWarmth: air.map((temperature) => gainWarmth(rates, temperature)),
      openLoss: air.map((temperature) => lossAt(rates, temperature, 0)),
      demand,
      useful,
      beam,
      diffuse,
      hours,
    };
  };
  return overseed === null ? growing(base) : { ...growing(base), overseed: growing(overseed) };
};

const blankHours = (count: number): SkyHours => ({
  air: new Float64Array(count),
  sun: new Float64Array(count),
  wind: new Float64Array(count),
  vapour: new Float64Array(count),
  cloud: new Float64Array(count),
  emissivity: new Float64Array(count),
});

const followedBySoil = (air: Float64Array, share: number): Float64Array => {
  const soil = new Float64Array(air.length);
  let now = air[0]!;
  for (let day = 0; day < air.length; day++) soil[day] = now += share * (air[day]! - now);
  return soil;
};

/** The clock hour of a real hour of a day: the two differ only where the clocks change. */
export const clockHour = (hour: number, hoursOfDay: number): number => Math.min(23, Math.floor((hour * 24) / hoursOfDay));

const fillLight = (
  { scene, window }: MemberMaker,
  values: ParameterValues,
  weather: WeatherSeries,
  season: Season,
  useful: Float64Array,
  beam: Float64Array,
  diffuse: Float64Array,
): void => {
  const { shapes, light, period } = scene;
  const days = weather.days;
  const cap = values[`light.saturation.${season}`];
  const perMegajoule = values['light.molPerMegajoule'];
  const beamOfDay = new Float64Array(24);
  const diffuseOfDay = new Float64Array(24);
  for (let day = 0; day < days; day++) {
    const shape = shapes[day]!;
    spreadOverHours(shape, weather.radiation[day]!, beamOfDay, diffuseOfDay);
    const dayLength = (2 * shape.sun.sunsetHourAngle) / 15;
    let sky = 0;
    for (let hour = 0; hour < 24; hour++) sky += diffuseOfDay[hour]!;
    let [dawn, dusk] = [0, 24];
    while (dawn < 24 && beamOfDay[dawn] === 0) dawn++;
    while (dusk > dawn && beamOfDay[dusk - 1] === 0) dusk--;
    for (let group = 0; group < light.classes; group++) {
      const at = (day * light.classes + group) * 24;
      let arrives = sky * light.sky[group]!;
      for (let hour = dawn; hour < dusk; hour++) arrives += beamOfDay[hour]! * light.beam[at + hour]!;
      useful[group * days + day] = usefulLightOfHalfSine(arrives * perMegajoule, dayLength, cap);
    }
    if (day < window.firstDay || day >= window.lastDay) continue;
    const length = period.firstHour[day + 1]! - period.firstHour[day]!;
    for (let hour = 0; hour < length; hour++) {
      const at = period.firstHour[day]! + hour - window.from;
      beam[at] = (beamOfDay[clockHour(hour, length)]! * 24) / length;
      diffuse[at] = (diffuseOfDay[clockHour(hour, length)]! * 24) / length;
    }
  }
};

const fillAir = (
  { scene, window, site }: MemberMaker,
  values: ParameterValues,
  weather: WeatherSeries,
  hours: SkyHours,
): void => {
  const { period, shapes } = scene;
  const shape = hourlyShape(values);
  const day24 = emptyHours();
  for (let day = window.firstDay; day < window.lastDay; day++) {
    const sun = shapes[day]!.sun;
    fillHours(dayBetween(weather, day), { solarNoon: sun.noonClock, dayLength: (2 * sun.sunsetHourAngle) / 15 }, shape, day24);
    const clear = clearSkyRadiation(extraterrestrialRadiation(site.latitude, weather.dayOfYear[day]!), site.elevation);
    // The share of cloud that the standard's longwave term reads from the radiation of the day.
    const cloud = clear > 0 ? Math.min(1, Math.max(0, 1.35 - (1.35 * weather.radiation[day]!) / clear)) : 0.5;
    const length = period.firstHour[day + 1]! - period.firstHour[day]!;
    for (let hour = 0; hour < length; hour++) {
      const at = period.firstHour[day]! + hour - window.from;
      const clock = clockHour(hour, length);
      hours.air[at] = day24.temperature[clock]!;
      hours.wind[at] = day24.wind[clock]!;
      hours.vapour[at] = day24.vapourPressure[clock]!;
      hours.cloud[at] = cloud;
      hours.emissivity[at] = skyEmissivity(hours.air[at]!, hours.vapour[at]!, cloud);
    }
  }
};

/** W/m² on level ground in a class of shade, hour by hour of the window, into the member's own hours. */
export const fillSun = (scene: Scene, window: Window, member: Member, shade: number, from: number, until: number): void => {
  const { period, light } = scene;
  const sky = light.sky[shade]!;
  const watts = 1e6 / 3600;
  for (let day = window.firstDay; day < window.lastDay; day++) {
    const first = period.firstHour[day]! - window.from;
    const length = period.firstHour[day + 1]! - period.firstHour[day]!;
    const at = (day * light.classes + shade) * 24;
    const end = Math.min(length, until - first);
    for (let hour = Math.max(0, from - first); hour < end; hour++) {
      const share = light.beam[at + clockHour(hour, length)]!;
      member.hours.sun[first + hour] = (member.beam[first + hour]! * share + member.diffuse[first + hour]! * sky) * watts;
    }
  }
};
