import { parametersOf } from '#shared/parameters/parameter.ts';

export const loadsParameters = parametersOf({});
