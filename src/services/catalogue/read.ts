import { catalogue } from '#shared/parameters/catalogue.ts';
import { sources } from '#shared/sources/sources.ts';
import { done } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';

export const readCatalogue: Service<'catalogue/read'> = () => done({ parameters: { ...catalogue }, sources: { ...sources } });
