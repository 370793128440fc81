import { migrations } from '#migrations/index.ts';

/** `pragma application_id` of a workspace: 'FBk1'. */
export const workspaceId = 0x46426b31;

/** Names of all migrations this program knows, in order. */
export const migrationNames: readonly string[] = Object.keys(migrations).toSorted();

/** `pragma user_version` of a file that has them all. */
export const newestVersion = migrationNames.length;
