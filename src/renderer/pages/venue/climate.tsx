import { toShown, toSI, unitOf, type Quantity } from '#shared/units/quantity.ts';
import { monthNames } from '#shared/wording/moments.ts';
import { NumberField, Part } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';
import { climateOf } from '../../desk/venue-start.ts';
import type { VenuePart } from './parts.ts';

type Normal = 'maximum' | 'minimum' | 'rain' | 'wetDays';
const columns: readonly (readonly [Normal, string, Quantity | null])[] = [
  ['maximum', 'Mean high', 'temperature'],
  ['minimum', 'Mean low', 'temperature'],
  ['rain', 'Rain in the month', 'rain'],
  ['wetDays', 'Days with rain', null],
];

/** Normals of the months, out of which seasons are drawn. */
export const Climate = ({ venue, set }: VenuePart) => {
  const { units } = useDesk();
  const { climate } = venue;
  const shown = (value: number, quantity: Quantity | null): number =>
    Math.round((quantity ? toShown(value, quantity, units) : value) * 100) / 100;
  const enter = (name: Normal, month: number, value: number): void => {
    const changed = climate[name].map((old, at) => (at === month ? value : old));
    set({ ...venue, climate: { ...climate, [name]: changed } });
  };
  return (
    <Part title="Weather of the months">
      <label>
        Where the figures come from
        <textarea
          rows={2}
          aria-label="Origin of the weather figures"
          key={climate.origin}
          defaultValue={climate.origin}
          onBlur={({ target }) =>
            target.value.trim() !== climate.origin && set({ ...venue, climate: { ...climate, origin: target.value.trim() } })
          }
        />
      </label>
      <table className="climate">
        <thead>
          <tr>
            <th scope="col">Month</th>
            {columns.map(([name, label, quantity]) => (
              <th key={name} scope="col">
                {label}
                {quantity && `, ${unitOf(quantity, units)}`}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {monthNames.map((monthName, month) => (
            <tr key={monthName}>
              <th scope="row">{monthName}</th>
              {columns.map(([name, label, quantity]) => (
                <td key={name}>
                  <NumberField
                    label={`${label}, ${monthName}`}
                    value={shown(climate[name][month]!, quantity)}
                    change={(typed) => enter(name, month, quantity ? toSI(typed, quantity, units) : typed)}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <button type="button" onClick={() => set({ ...venue, climate: climateOf(venue.place.latitude) })}>
        Guess again from the latitude
      </button>
    </Part>
  );
};
