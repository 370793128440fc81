import { done } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const listCopies: Service<'workspace/copies'> = ({ store }) => done([...store.copies()]);
