import { sourcesOf } from '#shared/sources/source.ts';

export const injurySources = sourcesOf({});
