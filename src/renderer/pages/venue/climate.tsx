import { toShown, toSI, unitOf, type Quantity } from '#shared/units/quantity.ts';
import { monthNames } from '#shared/wording/moments.ts';
import { NumberField, Part, TextField } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';
import { climateOf } from '../../desk/venue-start.ts';
import type { VenuePart } from './parts.ts';

const rows: readonly (readonly ['maximum' | 'minimum' | 'rain' | 'wetDays', string, Quantity | null])[] = [
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
  return (
    <Part title="Weather of the months">
      <label className="row">
        Where the figures come from{' '}
        <TextField
          label="Origin of the weather figures"
          value={climate.origin}
          change={(origin) => set({ ...venue, climate: { ...climate, origin } })}
        />
      </label>
      <div className="scroll">
        <table className="climate">
          <thead>
            <tr>
              <th scope="col">Month</th>
              {monthNames.map((name) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(([name, label, quantity]) => (
              <tr key={name}>
                <th scope="row">
                  {label}
                  {quantity && `, ${unitOf(quantity, units)}`}
                </th>
                {climate[name].map((value, month) => (
                  <td key={month}>
                    <NumberField
                      label={`${label}, ${monthNames[month]}`}
                      value={shown(value, quantity)}
                      change={(typed) =>
                        set({
                          ...venue,
                          climate: {
                            ...climate,
                            [name]: climate[name].map((old, at) =>
                              at === month ? (quantity ? toSI(typed, quantity, units) : typed) : old,
                            ),
                          },
                        })
                      }
                    />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <button type="button" onClick={() => set({ ...venue, climate: climateOf(venue.place.latitude) })}>
        Guess again from the latitude
      </button>
    </Part>
  );
};
