import { minorDigits } from '#shared/units/quantity.ts';
import { useDesk } from '../desk/desk.ts';
import { NumberField } from './fields.tsx';

/** Where a figure of the venue comes from. */
export interface Origin {
  /** What it is when nothing is entered; null where there is nothing to go back to. */
  readonly start: number | null;
  readonly standing: string;
}

const round = (value: number): number => Math.round(value * 1000) / 1000;

/** One figure of the venue: its unit, how it stands, and the ways back to what is stored and to how venues begin. */
export const Setting = ({
  label,
  unit,
  now,
  stored,
  origin,
  low,
  high,
  set,
}: {
  label: string;
  unit: string;
  now: number;
  stored: number;
  origin: Origin;
  low: number;
  high: number;
  set: (value: number) => void;
}) => {
  const begins = origin.start !== null && round(now) === round(origin.start);
  return (
    <li>
      <label>
        <span>{label}</span>
        <NumberField label={`${label}, ${unit}`} value={round(now)} low={low} high={high} change={set} />
        <span>{unit}</span>
      </label>
      <span className="was">
        {begins || origin.start === null ? origin.standing : 'entered for this venue'}
        {round(now) !== round(stored) && (
          <>
            {' '}
            · was {round(stored)}{' '}
            <button type="button" aria-label={`${label} back to ${round(stored)}`} onClick={() => set(round(stored))}>
              back
            </button>
          </>
        )}
        {origin.start !== null && !begins && round(stored) === round(now) && (
          <>
            {' '}
            <button
              type="button"
              aria-label={`${label}: default ${round(origin.start)}, as venues begin`}
              onClick={() => set(round(origin.start!))}
            >
              default {round(origin.start)}
            </button>
          </>
        )}
      </span>
    </li>
  );
};

/** A price that may be unknown: empty is no price, never nought. Kept in the smallest unit of the currency. */
export const PriceField = ({
  label,
  value,
  empty = 'no price',
  change,
}: {
  label: string;
  value: number | null;
  /** What an empty field says. */
  empty?: string;
  change: (value: number | null) => void;
}) => {
  const { venue, venueDraft } = useDesk();
  const { currency } = (venueDraft ?? venue!).rules;
  const whole = 10 ** minorDigits(currency);
  return (
    <input
      type="number"
      aria-label={label}
      min={0}
      step="any"
      placeholder={empty}
      defaultValue={value === null ? '' : value / whole}
      key={`${value} ${currency}`}
      onBlur={(event) => {
        const typed = event.target.value === '' ? null : Math.round(event.target.valueAsNumber * whole);
        if (typed !== value && (typed === null || (Number.isFinite(typed) && typed >= 0))) change(typed);
      }}
    />
  );
};
