import { useState } from 'react';
import { show as inUnits, unitOf } from '#shared/units/quantity.ts';
import type { Farm } from '#shared/vocabulary/resources.ts';
import { grasses } from '#shared/vocabulary/turf.ts';
import { grassWords } from '#shared/wording/words.ts';
import { monthNames } from '#shared/wording/moments.ts';
import { Choice, NumberField, Part, QuantityField, TextField } from '../../components/fields.tsx';
import { PriceField } from '../../components/setting.tsx';
import { useDesk } from '../../desk/desk.ts';
import { newFarm } from '../../desk/venue-start.ts';
import { freeKey, withAt, type VenuePart } from './parts.ts';

/** The farms a release can go to, and their terms. */
export const Farms = ({ venue, set }: VenuePart) => (
  <Part title="Farms">
    {venue.farms.length === 0 && (
      <p className="empty">Without a farm nothing can be resodded in a plan. Add one with what it quoted.</p>
    )}
    {venue.farms.map((farm, index) => (
      <FarmTerms
        key={farm.id}
        farm={farm}
        currency={venue.rules.currency}
        change={(changed) => set({ ...venue, farms: withAt(venue.farms, index, changed) })}
        remove={() => set({ ...venue, farms: venue.farms.filter((_, at) => at !== index) })}
      />
    ))}
    <button
      type="button"
      onClick={() => {
        const key = freeKey(
          'farm',
          venue.farms.map(({ id }) => id),
        );
        set({ ...venue, farms: [...venue.farms, newFarm(key, venue.field.sward[0]!.grass)] });
      }}
    >
      Add a farm
    </button>
    <p className="caution">Standing: what each farm quoted, as entered for this venue. A price left empty is in no sum.</p>
  </Part>
);

const FarmTerms = ({
  farm,
  currency,
  change,
  remove,
}: {
  farm: Farm;
  currency: string;
  change: (changed: Partial<Farm>) => void;
  remove: () => void;
}) => {
  const { units } = useDesk();
  // Open while its terms are entered for the first time; a price that arrives must not shut it.
  const [begun] = useState(farm.thickPrice === null && farm.thinPrice === null);
  const plain = (label: string, name: 'notice' | 'haul' | 'trucksPerDay', high: number) => (
    <label>
      <span>{label}</span>
      <NumberField
        label={`${farm.name}: ${label}`}
        value={farm[name]}
        low={0}
        high={high}
        change={(value) => change({ [name]: name === 'trucksPerDay' ? Math.round(value) : value })}
      />
    </label>
  );
  const area = (label: string, name: 'stock' | 'harvestPerDay') => (
    <label>
      <span>
        {label}, {unitOf('area', units)}
      </span>
      <QuantityField
        label={`${farm.name}: ${label}`}
        quantity="area"
        digits={0}
        value={farm[name]}
        change={(value) => change({ [name]: value })}
      />
    </label>
  );
  const price = (label: string, name: 'thinPrice' | 'thickPrice' | 'truckPrice' | 'reservePrice' | 'rushPrice') => (
    <label>
      <span>
        {label}, {currency}
      </span>
      <PriceField label={`${farm.name}: ${label}`} value={farm[name]} change={(value) => change({ [name]: value })} />
    </label>
  );
  return (
    <details className="farm" open={begun}>
      <summary>
        {farm.name}: {grassWords[farm.grass]}, notice {farm.notice} h, {inUnits(farm.stock, 'area', units)} open
      </summary>
      <div className="farm-terms">
        <label className="whole">
          <span>Name</span>
          <TextField label={`Name of ${farm.name}`} value={farm.name} change={(name) => change({ name })} />
        </label>
        <label className="whole">
          <span>Grass</span>
          <Choice
            label={`${farm.name}: grass`}
            value={farm.grass}
            words={grasses.map((grass) => [grass, grassWords[grass]] as const)}
            change={(grass) => change({ grass })}
          />
        </label>
        {plain('notice, h', 'notice', 1440)}
        {plain('haul, h', 'haul', 96)}
        {plain('trucks a day', 'trucksPerDay', 200)}
        {area('harvest a day', 'harvestPerDay')}
        {area('open for order', 'stock')}
        <label>
          <span>Sand in the sod, %</span>
          <NumberField
            label={`${farm.name}: sand in the sod, %`}
            value={Math.round(1000 * farm.sandShare) / 10}
            low={0}
            high={100}
            change={(value) => change({ sandShare: value / 100 })}
          />
        </label>
        {price('thick cut, a m²', 'thickPrice')}
        {price('thin cut, a m²', 'thinPrice')}
        {price('a truck', 'truckPrice')}
        {price('reserve, a m²', 'reservePrice')}
        {price('rush order, a m²', 'rushPrice')}
        <label>
          <span>Called off: share due, %</span>
          <NumberField
            label={`${farm.name}: share due when called off, %`}
            value={Math.round(100 * farm.cancelShare)}
            low={0}
            high={100}
            change={(value) => change({ cancelShare: value / 100 })}
          />
        </label>
      </div>
      <fieldset className="months">
        <legend>Months without harvest</legend>
        {monthNames.map((name, at) => (
          <label key={name}>
            <input
              type="checkbox"
              checked={farm.closedMonths.includes(at + 1)}
              onChange={(event) =>
                change({
                  closedMonths: event.target.checked
                    ? [...farm.closedMonths, at + 1].toSorted((a, b) => a - b)
                    : farm.closedMonths.filter((month) => month !== at + 1),
                })
              }
            />
            {name}
          </label>
        ))}
      </fieldset>
      <button type="button" onClick={remove}>
        Remove {farm.name}
      </button>
    </details>
  );
};
