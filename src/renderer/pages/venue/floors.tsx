import { figure, unitOf } from '#shared/units/quantity.ts';
import { startingCoverings } from '#shared/parameters/coverings.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';
import { EntryTable, Part, QuantityField } from '../../components/fields.tsx';
import { percent } from '../../components/numbers.ts';
import { useDesk } from '../../desk/desk.ts';
import { saveCovering } from '../../desk/venue-keeping.ts';
import { HatchSwatch } from '../../drawings/hatches.tsx';

/** The classes of covering: what each passes, what it costs to hire and lay, and how far its figures can be leaned on. */
export const Floors = () => {
  const { coverings, units, venue } = useDesk();
  return (
    <Part title="Floors">
      <EntryTable
        name="floors-table"
        caption={`Classes, not products; a supplier’s own sheet goes before them. Hire in ${venue?.rules.currency ?? ''} a m² and event: empty where none is quoted, 0 for a floor the venue owns. Changes here are stored at once.`}
        heads={[
          'Class',
          'Hire',
          `Laid by one in an hour, ${unitOf('area', units)}`,
          `On a truck, ${unitOf('area', units)}`,
          'Light',
          'Seal',
          'Rain through',
          'Wear through',
          'Wheel to',
          'Standing',
        ]}
      >
        {coverings.map((covering) => (
          <FloorRow key={covering.id} covering={covering} />
        ))}
      </EntryTable>
    </Part>
  );
};

const FloorRow = ({ covering }: { covering: Covering }) => {
  const begun = startingCoverings.find((one) => one.id === covering.id);
  const changed = begun !== undefined && JSON.stringify(begun) !== JSON.stringify(covering);
  const set = (part: Partial<Covering>): void => void saveCovering({ ...covering, ...part });
  return (
    <tr>
      <th scope="row">
        <HatchSwatch covering={covering.id} /> {covering.name}
      </th>
      <td>
        <input
          type="number"
          aria-label={`Hire of ${covering.name}, a m²`}
          min={0}
          step="any"
          placeholder="none"
          key={covering.hirePrice}
          defaultValue={covering.hirePrice ?? ''}
          onBlur={({ target }) => {
            const typed = target.value === '' ? null : target.valueAsNumber;
            if (typed !== covering.hirePrice && (typed === null || typed >= 0)) set({ hirePrice: typed });
          }}
        />
      </td>
      <td>
        <QuantityField
          label={`${covering.name} laid by one in an hour`}
          quantity="area"
          digits={0}
          value={covering.layingRate}
          change={(layingRate) => layingRate > 0 && set({ layingRate })}
        />
      </td>
      <td>
        <QuantityField
          label={`${covering.name} on a truck`}
          quantity="area"
          digits={0}
          value={covering.perTruck}
          change={(perTruck) => perTruck >= 1 && set({ perTruck })}
        />
      </td>
      <td>{percent(covering.lightTransmission)}</td>
      <td>{percent(covering.seal)}</td>
      <td>{percent(covering.rainThrough)}</td>
      <td>{percent(covering.wearThrough)}</td>
      <td>{covering.wheelRating === 0 ? 'feet only' : `${figure(covering.wheelRating, 0)} kN`}</td>
      <td>
        {changed ? 'entered for this venue' : covering.standing}
        {changed && begun && (
          <button type="button" aria-label={`${covering.name} as the class begins`} onClick={() => set(begun)}>
            default
          </button>
        )}
      </td>
    </tr>
  );
};
