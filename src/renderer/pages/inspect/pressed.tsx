/** One out of a few, each a button wide enough for a thumb. */
export const Pressed = <Value extends string>({
  label,
  value,
  choices,
  change,
}: {
  label: string;
  value: Value | null;
  choices: readonly (readonly [Value, string])[];
  change: (value: Value) => void;
}) => (
  <div className="pressed" role="group" aria-label={label}>
    {choices.map(([key, words]) => (
      <button key={key} type="button" aria-pressed={value === key} onClick={() => change(key)}>
        {words}
      </button>
    ))}
  </div>
);
