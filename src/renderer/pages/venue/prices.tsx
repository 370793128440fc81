import { materialKinds, materialUnits } from '#shared/vocabulary/plan.ts';
import { costWords } from '#shared/vocabulary/money.ts';
import { Part } from '../../components/fields.tsx';
import { PriceField } from '../../components/setting.tsx';
import type { VenuePart } from './parts.ts';

/** Wages and materials. What is not entered is named as missing in every sum. */
export const Prices = ({ venue, set }: VenuePart) => {
  const { currency } = venue.rules;
  const { workforce } = venue;
  return (
    <Part title="Prices">
      <div className="farm-terms">
        <label>
          <span>Currency</span>
          <input
            aria-label="Currency, three letters"
            defaultValue={currency}
            key={currency}
            maxLength={3}
            onBlur={(event) => {
              const typed = event.target.value.trim().toUpperCase();
              if (/^[A-Z]{3}$/.test(typed)) set({ ...venue, rules: { ...venue.rules, currency: typed } });
              else event.target.value = currency;
            }}
          />
        </label>
        <label>
          <span>A person, an hour</span>
          <PriceField
            label="Price of a person for an hour"
            value={workforce.hourPrice}
            change={(hourPrice) => set({ ...venue, workforce: { ...workforce, hourPrice } })}
          />
        </label>
        <label>
          <span>The same on overtime</span>
          <PriceField
            label="Price of a person for an hour of overtime"
            value={workforce.overtimePrice}
            change={(overtimePrice) => set({ ...venue, workforce: { ...workforce, overtimePrice } })}
          />
        </label>
        {materialKinds.map((kind) => (
          <label key={kind}>
            <span>
              {costWords[kind]}, a {materialUnits[kind]}
            </span>
            <PriceField
              label={`Price of ${costWords[kind]}, a ${materialUnits[kind]}`}
              value={venue.prices[kind] ?? null}
              change={(price) => set({ ...venue, prices: { ...venue.prices, [kind]: price } })}
            />
          </label>
        ))}
      </div>
      <p className="caution">
        Standing: your own quotations. Empty is no price: the cost is then named and left out of the sum. Where wages or sod have
        none, the plan seeks the fewest people-hours instead of the least cost.
      </p>
    </Part>
  );
};
