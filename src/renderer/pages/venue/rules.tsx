import { Part } from '../../components/fields.tsx';
import { Setting } from '../../components/setting.tsx';
import { startingRules } from '../../desk/venue-start.ts';
import type { VenuePart } from './parts.ts';

const common = 'common practice, no source';
/** Name, label, unit, what the shown figure is of the stored one, lowest, highest, standing of the figure a venue begins with. */
const rows = [
  ['coverNeeded', 'Live cover needed', '%', 100, 30, 100, common],
  ['rutAllowed', 'Deepest rut allowed', 'mm', 1000, 0, 100, common],
  ['chanceNeeded', 'Chance of being ready a plan must reach', '%', 100, 50, 99.9, 'our assumption'],
  ['certifyLead', 'Surface tested before the home date', 'h', 1, 0, 240, common],
  ['paint', 'Painting', 'h', 1, 0, 96, common],
  ['settle', 'New sod settles', 'h', 1, 0, 96, common],
  ['contingency', 'Kept in hand', 'h', 1, 0, 240, 'our assumption'],
  ['rest', 'Closed after a covering comes off', 'h', 1, 0, 168, common],
  ['sodWaste', 'Sod ordered beyond the measure', '%', 100, 0, 30, common],
  ['groundPressure', 'Nothing drives straight on turf above', 'kPa', 1, 5, 500, 'published: park guide, 7 psi'],
] as const;

/** What the venue asks of the surface and of its own work. */
export const Rules = ({ venue, stored, set }: VenuePart) => (
  <Part title="What the venue asks">
    <ul className="settings">
      {rows.map(([name, label, unit, factor, low, high, standing]) => (
        <Setting
          key={name}
          label={label}
          unit={unit}
          now={venue.rules[name] * factor}
          stored={stored.rules[name] * factor}
          origin={{ start: startingRules[name] * factor, standing }}
          low={low}
          high={high}
          set={(value) => set({ ...venue, rules: { ...venue.rules, [name]: value / factor } })}
        />
      ))}
    </ul>
    <p className="caution">The competition’s own rules go before them.</p>
  </Part>
);
