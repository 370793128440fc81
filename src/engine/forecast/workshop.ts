import type { CoveredStretch } from '#engine/forecast/exposure.ts';
import { type GroundLoads, coveringOf } from '#engine/forecast/ground-loads.ts';
import { type Course, coursesOf, newShared, type Shared } from '#engine/forecast/courses.ts';
import type { Window } from '#engine/forecast/member.ts';
import { type WaterRoom, waterRoomOf } from '#engine/forecast/water-room.ts';
import type { Scene } from '#engine/forecast/scene.ts';
import { type ClimateSettings, climateSettings } from '#engine/heat/climate-settings.ts';
import { type Climate, openClimate } from '#engine/heat/climate-column.ts';
import { type Floor, type FloorCare, layOut, uncovered } from '#engine/heat/floor.ts';
import { pitchGround } from '#engine/heat/pitch-ground.ts';
import { lightThrough } from '#engine/light/under-covering.ts';
import { driverStride, standStride } from '#engine/recovery/stand-layout.ts';
import type { IrrigationSchedule } from '#engine/water/root-zone-course.ts';
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
  readonly courses: readonly Course[];
  /** The place of each group's course among the courses. */
  readonly courseOf: Int16Array;
  /** By course. */
  readonly floors: readonly (readonly LaidFloor[])[];
  readonly profile: RootZoneProfile;
  readonly irrigation: IrrigationSchedule;
  readonly deepTemperature: number;
  /** The day after the last on which anything but growth happens: nobody asks for water beyond it. */
  readonly lastBusy: number;
  readonly waterRoom: WaterRoom;
  readonly drivers: Float64Array;
  readonly stand: Float64Array;
}

export const workshop = (scene: Scene, window: Window, loads: GroundLoads, shared: Shared = newShared()): Workshop => {
  const { parameters, venue } = scene.question;
  const { climate: normals, field } = venue;
  const deepTemperature = normals.maximum.reduce((sum, high, month) => sum + (high + normals.minimum[month]!) / 2, 0) / 12;
  const profile = rootZoneProfile(field.rootZone, seasonOf(field.sward[0]!.grass), parameters);
  const settings = climateSettings(parameters);
  const ground = pitchGround(field.rootZone, rootZoneWaterContent(profile, drainedState(profile)), deepTemperature, parameters);
  const courses = coursesOf(scene, shared);
  const courseOf = new Int16Array(scene.groups.length);
  courses.forEach((course, at) => course.groups.forEach((group) => (courseOf[group] = at)));
  return {
    scene,
    window,
    courses,
    courseOf,
    lastBusy: 1 + courses.reduce((last, { busy }) => Math.max(last, busy.lastIndexOf(1)), -1),
    loads,
    settings,
    climate: openClimate(ground, settings, false),
    bare: Array.from(scene.light.sky, (skyView) => layOut({ ...uncovered, skyView }, ground, settings)),
    floors: courses.map(({ group }) =>
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
    waterRoom: waterRoomOf(profile, scene.period.days.length),
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
