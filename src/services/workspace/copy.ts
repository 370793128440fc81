import { done } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const copyWorkspace: Service<'workspace/copy'> = async ({ store }) => done(await store.copyNow('asked'));
