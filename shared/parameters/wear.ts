import { parametersOf } from '#shared/parameters/parameter.ts';

export const wearParameters = parametersOf({});
