import { useId, useState } from 'react';

/** A number for one hand: press to step, or type it; empty for what was not read. */
export const SteppedField = ({
  label,
  unit,
  value,
  step,
  digits,
  begin,
  change,
}: {
  label: string;
  unit: string;
  value: number | null;
  step: number;
  digits: number;
  /** Where the first press begins. */
  begin: number;
  change: (value: number | null) => void;
}) => {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const rounded = (number: number): number => Number(number.toFixed(Math.max(digits, 2)));
  const press = (way: 1 | -1): void => {
    setTyped(null);
    change(value === null ? begin : rounded(value + way * step));
  };
  const take = (text: string): void => {
    setTyped(text);
    const number = Number(text.replace(',', '.'));
    if (text.trim() === '') change(null);
    else if (Number.isFinite(number)) change(number);
  };
  const wrong = typed !== null && typed.trim() !== '' && !Number.isFinite(Number(typed.replace(',', '.')));
  return (
    <div className="stepped">
      <label htmlFor={id}>
        {label}
        {unit && <span className="unit">, {unit}</span>}
      </label>
      <button type="button" aria-label={`${label}: less`} onClick={() => press(-1)}>
        −
      </button>
      <input
        id={id}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        placeholder="not read"
        aria-invalid={wrong}
        value={typed ?? (value === null ? '' : String(Number(value.toFixed(digits))))}
        onChange={(event) => take(event.target.value)}
        onBlur={() => setTyped(null)}
      />
      <button type="button" aria-label={`${label}: more`} onClick={() => press(1)}>
        +
      </button>
    </div>
  );
};
