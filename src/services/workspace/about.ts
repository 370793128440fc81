import { engineVersion } from '#engine/version.ts';
import { done } from '#services/answers.ts';
import { parameterVersion } from '#services/forecast/fingerprint.ts';
import type { Service } from '#services/needs.ts';

export const aboutWorkspace: Service<'workspace/about'> = async ({ store, version }) => {
  const venues = await store.read((contents) => contents.venues.list());
  const { file, schemaVersion } = store;
  return done({ version, engineVersion, parameterVersion, schemaVersion, file, venues: venues.length, size: await store.size() });
};
