import { done } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const compactWorkspace: Service<'workspace/compact'> = async ({ store }) => done(await store.compact());
