import { done } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const saveCovering: Service<'covering/save'> = ({ store }, { covering }) =>
  store.write(async (contents) => {
    await contents.coverings.save(covering);
    return done(covering);
  });
