import { figure, show, type UnitSystem } from '#shared/units/quantity.ts';
import type { Warning } from '#shared/vocabulary/forecast.ts';

const whole = (value: number): string => figure(value, Number.isInteger(value) ? 0 : 1);

/** A warning as a sentence without its full stop, in the reader's units. Says what is out of line, never that anything else is in line. */
export const warningText = ({ kind, subject, value, limit }: Warning, units: UnitSystem): string => {
  const force = (of: number): string => show(of, 'force', units);
  const pressure = (of: number): string => show(of, 'pressure', units);
  const [is, most] = [value ?? 0, limit ?? 0];
  switch (kind) {
    case 'park-rule':
      return `${subject}: ${pressure(is)} straight on turf; a published park guide stops at ${pressure(most)}`;
    case 'bearing-strength':
      return `${subject}: ${pressure(is)} on the root zone, which bears ${pressure(most)}`;
    case 'covering-feet-only':
      return `${subject}: this covering is for feet only; the heaviest wheel carries ${force(is)}`;
    case 'covering-rating':
      return `${subject}: the heaviest wheel carries ${force(is)}, the covering is rated ${force(most)}`;
    case 'wheel-load':
      return `${subject}: one wheel carries ${force(is)}; above ${force(most)} the subsoil needs looking at`;
    case 'weight-off-axles':
      return `${subject}: weighs ${force(is)} but its axles carry ${force(most)}: it is ${is > most ? 'heavier' : 'lighter'} than its axles`;
    case 'lorry-route-used-again':
      return `${subject}: ${whole(is)} passes over one panel route; a published park guide lets a route be used once, in and out`;
    case 'covered-longer-than-usual':
      return `${subject}: lies for ${whole(is)} days; in such weather the trade leaves it for about ${whole(most)} days`;
    case 'aluminium-too-long':
      return `${subject}: lies for ${whole(is)} h of a day; a published park guide leaves it ${whole(most)} h`;
    case 'aluminium-at-midday':
      return `${subject}: lies for ${whole(is)} h of the middle of a day; a published park guide keeps it off the turf then`;
    case 'used-too-soon':
      return `${subject}: on the turf ${whole(is)} h after its floor came off; a published park guide keeps it closed for ${whole(most)} h`;
  }
};
