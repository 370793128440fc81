import type { Migration } from 'kysely/migration';
import * as workspace from '#migrations/0001-workspace.ts';
import * as plansAndWeather from '#migrations/0002-plans-and-weather.ts';
import * as money from '#migrations/0003-money.ts';
import * as evidence from '#migrations/0004-evidence.ts';
import * as draftsAndIndices from '#migrations/0005-drafts-and-indices.ts';
import * as homeDates from '#migrations/0006-home-dates.ts';

/** Every migration by name, in order. The number of the last one is the version of the file (`pragma user_version`). */
export const migrations: Readonly<Record<string, Migration>> = {
  '0001-workspace': workspace,
  '0002-plans-and-weather': plansAndWeather,
  '0003-money': money,
  '0004-evidence': evidence,
  '0005-drafts-and-indices': draftsAndIndices,
  '0006-home-dates': homeDates,
};
