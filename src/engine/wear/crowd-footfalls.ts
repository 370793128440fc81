import type { Crowd, ZoneUse } from '#shared/vocabulary/booking.ts';

/**
 * Footfalls per m² that a crowd makes in a zone: people/m² × footfalls of one person in an hour × hours × how hard the zone is used.
 * Density in people/m², hours in h. Linear in every factor; negative hours count as 0.
 */
export interface CrowdSettings {
  /** Footfalls of one person in an hour. */
  readonly steps: Readonly<Record<Crowd['activity'], number>>;
  readonly zone: Readonly<Record<ZoneUse, number>>;
}

export const crowdFootfalls = (
  density: number,
  hours: number,
  activity: Crowd['activity'],
  use: ZoneUse,
  settings: CrowdSettings,
): number => Math.max(0, density) * Math.max(0, hours) * settings.steps[activity] * settings.zone[use];
