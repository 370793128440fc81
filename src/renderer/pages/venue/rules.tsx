import { toShown, toSI, unitOf, type Quantity } from '#shared/units/quantity.ts';
import { Part } from '../../components/fields.tsx';
import { Setting } from '../../components/setting.tsx';
import { useDesk } from '../../desk/desk.ts';
import { startingRules } from '../../desk/venue-start.ts';
import type { VenuePart } from './parts.ts';

const common = 'common practice, no source';
/** Name, label, quantity, lowest and highest in SI, standing of the figure a venue begins with. */
const rows = [
  ['coverNeeded', 'Live cover needed', 'share', 0.3, 1, common],
  ['rutAllowed', 'Deepest rut allowed', 'smallLength', 0, 0.1, common],
  ['chanceNeeded', 'Chance of being ready a plan must reach', 'share', 0.5, 0.999, 'our assumption'],
  ['certifyLead', 'Surface tested before the home date', 'hours', 0, 240, common],
  ['paint', 'Painting', 'hours', 0, 96, common],
  ['settle', 'New sod settles', 'hours', 0, 96, common],
  ['contingency', 'Kept in hand', 'hours', 0, 240, 'our assumption'],
  ['rest', 'Closed after a covering comes off', 'hours', 0, 168, common],
  ['sodWaste', 'Sod ordered beyond the measure', 'share', 0, 0.3, common],
  ['groundPressure', 'Nothing drives straight on turf above', 'pressure', 5, 500, 'published: park guide, 7 psi'],
] as const satisfies readonly (readonly [keyof VenuePart['venue']['rules'], string, Quantity, number, number, string])[];

/** What the venue asks of the surface and of its own work. */
export const Rules = ({ venue, stored, set }: VenuePart) => {
  const { units } = useDesk();
  return (
    <Part title="What the venue asks">
      <ul className="settings">
        {rows.map(([name, label, quantity, low, high, standing]) => {
          const shown = (si: number): number => toShown(si, quantity, units);
          return (
            <Setting
              key={name}
              label={label}
              unit={unitOf(quantity, units)}
              now={shown(venue.rules[name])}
              stored={shown(stored.rules[name])}
              origin={{ start: shown(startingRules[name]), standing }}
              low={shown(low)}
              high={shown(high)}
              set={(value) => set({ ...venue, rules: { ...venue.rules, [name]: toSI(value, quantity, units) } })}
            />
          );
        })}
      </ul>
      <p className="caution">The competition’s own rules go before them.</p>
    </Part>
  );
};
