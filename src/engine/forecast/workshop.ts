import type { CoveredStretch } from '#engine/forecast/exposure.ts';
import { type GroundLoads, coveringOf } from '#engine/forecast/ground-loads.ts';
import type { Member, Window } from '#engine/forecast/member.ts';
import type { Scene } from '#engine/forecast/scene.ts';
import { type ClimateSettings, climateSettings } from '#engine/heat/climate-settings.ts';
import { type Climate, openClimate } from '#engine/heat/climate.ts';
import { type Floor, type FloorCare, layOut, uncovered } from '#engine/heat/floor.ts';
import { pitchGround } from '#engine/heat/pitch-ground.ts';
import { lightThrough } from '#engine/light/under-covering.ts';
import { driverStride, standStride } from '#engine/recovery/stand-layout.ts';
import {
  type IrrigationSchedule,
  type RootZoneCourse,
  evaporationUnderCovering,
  rootZoneCourse,
} from '#engine/water/root-zone-course.ts';
import { type RootZoneProfile, rootZoneProfile } from '#engine/water/root-zone-profile.ts';
import { drainedState, rootZoneWaterContent } from '#engine/water/root-zone.ts';
import { seasonOf } from '#shared/vocabulary/turf.ts';

/** A floor of a group ready for the solver, with what the turf gets through it. */
export interface LaidFloor {
  readonly stretch: CoveredStretch;
  readonly floor: Floor;
  /** Share of light that reaches the turf. */
  readonly light: number;
  readonly seal: number;
  /** Hours after laying in which a lift opens a share of the zone. */
  readonly lifts: readonly { readonly from: number; readonly until: number; readonly share: number }[];
}

/** Work space and everything reckoned once for a scene: floors by group, the soil column, the loads. */
export interface Workshop {
  readonly scene: Scene;
  readonly window: Window;
  readonly loads: GroundLoads;
  readonly settings: ClimateSettings;
  readonly climate: Climate;
  readonly bare: readonly Floor[];
  readonly floors: readonly (readonly LaidFloor[])[];
  readonly profile: RootZoneProfile;
  readonly irrigation: IrrigationSchedule;
  readonly deepTemperature: number;
  readonly crown: Float64Array;
  readonly drivers: Float64Array;
  readonly stand: Float64Array;
}

export const workshop = (scene: Scene, window: Window, loads: GroundLoads): Workshop => {
  const { parameters, venue } = scene.question;
  const { climate: normals, field } = venue;
  const deepTemperature = normals.maximum.reduce((sum, high, month) => sum + (high + normals.minimum[month]!) / 2, 0) / 12;
  const profile = rootZoneProfile(field.rootZone, seasonOf(field.sward[0]!.grass), parameters);
  const settings = climateSettings(parameters);
  const ground = pitchGround(field.rootZone, rootZoneWaterContent(profile, drainedState(profile)), deepTemperature, parameters);
  return {
    scene,
    window,
    loads,
    settings,
    climate: openClimate(ground, settings),
    bare: Array.from(scene.light.sky, (skyView) => layOut({ ...uncovered, skyView }, ground, settings)),
    floors: scene.groups.map((group) =>
      group.exposure.stretches.map((stretch) => {
        const covering = coveringOf(scene, stretch)!;
        const { layer } = stretch;
        const care = careOf(scene, stretch);
        const floor = layOut(
          {
            stack: [covering],
            loading: layer.loading,
            cleanliness: layer.cleanliness,
            iceTemperature: layer.iceTemperature,
            care,
            steps: stretch.until - stretch.from,
            skyView: scene.light.sky[group.shade]!,
          },
          ground,
          settings,
        );
        const lifts = care.filter((act) => act.kind === 'lift');
        return {
          stretch,
          floor,
          light: lightThrough(covering.lightTransmission, layer.cleanliness, layer.loading),
          seal: covering.seal,
          lifts,
        };
      }),
    ),
    profile,
    irrigation: { kind: 'refill', target: parameters['water.irrigation.target'], limit: parameters['water.irrigation.limit'] },
    deepTemperature,
    crown: new Float64Array(window.hours),
    drivers: new Float64Array(scene.period.days.length * driverStride),
    stand: new Float64Array(standStride),
  };
};

/** The care of a layer in whole hours after it was laid; what lies outside its hours is cut off. */
const careOf = ({ period, question }: Scene, { from, until, layer }: CoveredStretch): FloorCare[] =>
  layer.care
    .map((care) => ({
      kind: care.kind,
      from: Math.max(0, Math.round(period.hourOf(care.from)) - from),
      until: Math.min(until - from, Math.round(period.hourOf(care.until)) - from),
      share: care.share,
      ...(care.kind === 'soil-heating' ? { power: question.parameters['heat.soilHeating.power'] } : {}),
    }))
    .filter((care) => care.until > care.from);

export const dayOfHour = (firstHour: Int32Array, hour: number): number => {
  let day = 0;
  while (firstHour[day + 1]! <= hour) day++;
  return day;
};

export const liftedAt = (laid: LaidFloor, hour: number): number =>
  laid.lifts.reduce(
    (most, lift) =>
      hour - laid.stretch.from >= lift.from && hour - laid.stretch.from < lift.until ? Math.max(most, lift.share) : most,
    0,
  );

/** The root zone's water under a group's coverings in one member. Groups of one exposure share it. */
export const waterOf = (shop: Workshop, at: number, member: Member): RootZoneCourse => {
  const { scene, profile, irrigation } = shop;
  const { firstHour } = scene.period;
  const stretches = scene.groups[at]!.exposure.stretches;
  return rootZoneCourse(profile, member.weather, member.demand, irrigation, (day) => {
    const [start, end] = [firstHour[day]!, firstHour[day + 1]!];
    let share = 0;
    let rain = 0;
    let evaporation = 0;
    for (const stretch of stretches) {
      const part = Math.max(0, Math.min(end, stretch.until) - Math.max(start, stretch.from)) / (end - start);
      if (part === 0) continue;
      const covering = coveringOf(scene, stretch)!;
      share += part;
      rain += part * covering.rainThrough;
      evaporation += part * evaporationUnderCovering(covering, member.values['water.stillEvaporation']);
    }
    return share === 0 ? null : { share: Math.min(1, share), rainThrough: rain / share, evaporation: evaporation / share };
  });
};
