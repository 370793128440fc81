import { invalid } from '#services/answers.ts';
import type { Service } from '#services/needs.ts';
export const importWeather: Service<'weather/import'> = () => invalid([{ field: 'text', reason: 'pending' }]);
