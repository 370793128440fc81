import { sourcesOf } from '#shared/sources/source.ts';

export const loadsSources = sourcesOf({});
