import type { CourseNotes, CourseTrack } from '#engine/forecast/course-record.ts';
import type { Exposure } from '#engine/forecast/exposure.ts';
import type { Tolerances } from '#engine/forecast/tolerances.ts';
import { causes } from '#engine/injury/causes.ts';
import { keptUnderIce } from '#engine/injury/ice-encasement.ts';
import { spillKept, type SpillTraits } from '#engine/injury/spill.ts';
import { injureAt } from '#engine/recovery/injure.ts';

const FROST = causes.indexOf('frost');
const SPILL = causes.indexOf('spill');

/** Ice that has gone on this day: the share of the turf it lay on keeps what such a stand keeps after so many days. */
export const freeze = (stand: Float64Array, { incidents }: Exposure, day: number, { ice }: Tolerances): void => {
  for (const { incident, days, day: formed, share } of incidents) {
    if (incident.kind !== 'ice' || Math.floor(formed + days) !== day) continue;
    const kept = 1 - share * (1 - keptUnderIce(days, ice.halfKill, ice.steepness));
    injureAt(stand, 0, FROST, kept, kept);
  }
};

/** Share of cover that everything spilt leaves on a day; 1 where nothing was. */
export const keptAfterSpills = ({ incidents }: Exposure, day: number, traits: SpillTraits): number => {
  let kept = 1;
  for (const { incident, day: spilt, share } of incidents)
    if (incident.kind !== 'ice')
      kept *= spillKept({ agent: incident.kind, areaShare: share, treatedAfter: incident.treatedAfter }, day - spilt, traits);
  return kept;
};

/** Lays what was spilt over a course: the spot is lost and comes back in its own weeks, whatever the weather. */
export const burn = (exposure: Exposure, traits: SpillTraits, track: CourseTrack, notes: CourseNotes): void => {
  if (exposure.incidents.every(({ incident }) => incident.kind === 'ice')) return;
  for (let day = 0; day < track.cover.length; day++) {
    const kept = keptAfterSpills(exposure, day, traits);
    if (kept === 1) continue;
    track.cover[day]! *= kept;
    track.crowns[day]! *= kept;
    if (notes.lost) notes.lost[day * causes.length + SPILL]! -= Math.log(Math.max(1e-12, kept));
  }
};
