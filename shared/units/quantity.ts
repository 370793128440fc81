/**
 * Showing SI quantities in the reader's units. Values are kept and computed in SI only; a switch of units changes the text, never
 * the value, so nothing drifts. Typed-in values go back through `toSI`.
 */
export const unitSystems = ['us', 'si'] as const;
export type UnitSystem = (typeof unitSystems)[number];

interface Scale {
  readonly unit: string;
  /** shown = si × factor + offset */
  readonly factor: number;
  readonly offset?: number;
  readonly digits: number;
}

/** Exact factors: 1 ft = 0.3048 m, 1 lb = 0.45359237 kg, 1 lbf/in² = 6.894757 kPa. */
const foot = 0.3048;
const pound = 0.45359237;
export const quantities = {
  length: { si: { unit: 'm', factor: 1, digits: 1 }, us: { unit: 'ft', factor: 1 / foot, digits: 0 } },
  smallLength: { si: { unit: 'mm', factor: 1000, digits: 0 }, us: { unit: 'in', factor: 12 / foot, digits: 2 } },
  area: { si: { unit: 'm²', factor: 1, digits: 0 }, us: { unit: 'ft²', factor: 1 / (foot * foot), digits: 0 } },
  mass: { si: { unit: 'kg', factor: 1, digits: 0 }, us: { unit: 'lb', factor: 1 / pound, digits: 0 } },
  areaMass: { si: { unit: 'kg/m²', factor: 1, digits: 1 }, us: { unit: 'lb/ft²', factor: (foot * foot) / pound, digits: 1 } },
  pressure: { si: { unit: 'kPa', factor: 1, digits: 0 }, us: { unit: 'psi', factor: 1 / 6.894757293168361, digits: 1 } },
  force: { si: { unit: 'kN', factor: 1, digits: 1 }, us: { unit: 'lbf', factor: 224.80894309971047, digits: 0 } },
  temperature: { si: { unit: '°C', factor: 1, digits: 0 }, us: { unit: '°F', factor: 1.8, offset: 32, digits: 0 } },
  rain: { si: { unit: 'mm', factor: 1, digits: 0 }, us: { unit: 'in', factor: 1 / 25.4, digits: 2 } },
  speed: { si: { unit: 'm/s', factor: 1, digits: 1 }, us: { unit: 'mph', factor: 3600 / 1609.344, digits: 0 } },
  light: { si: { unit: 'mol/m²/d', factor: 1, digits: 1 }, us: { unit: 'mol/m²/d', factor: 1, digits: 1 } },
  onGround: { si: { unit: 'per m²', factor: 1, digits: 0 }, us: { unit: 'per ft²', factor: foot * foot, digits: 0 } },
  share: { si: { unit: '%', factor: 100, digits: 0 }, us: { unit: '%', factor: 100, digits: 0 } },
  water: { si: { unit: 'm³', factor: 1, digits: 1 }, us: { unit: 'gal', factor: 1 / 0.003785411784, digits: 0 } },
  spilled: { si: { unit: 'l', factor: 1, digits: 1 }, us: { unit: 'gal', factor: 1 / 3.785411784, digits: 1 } },
  volume: { si: { unit: 'm³', factor: 1, digits: 1 }, us: { unit: 'yd³', factor: 1 / (0.9144 * 0.9144 * 0.9144), digits: 1 } },
  hours: { si: { unit: 'h', factor: 1, digits: 0 }, us: { unit: 'h', factor: 1, digits: 0 } },
} as const satisfies Record<string, Record<UnitSystem, Scale>>;
export type Quantity = keyof typeof quantities;

const scaleOf = (quantity: Quantity, system: UnitSystem): Scale => quantities[quantity][system];

export const unitOf = (quantity: Quantity, system: UnitSystem): string => scaleOf(quantity, system).unit;

/** The number a reader sees, not rounded. */
export const toShown = (si: number, quantity: Quantity, system: UnitSystem): number => {
  const scale = scaleOf(quantity, system);
  return si * scale.factor + (scale.offset ?? 0);
};

/** Back from the number a reader typed. */
export const toSI = (shown: number, quantity: Quantity, system: UnitSystem): number => {
  const scale = scaleOf(quantity, system);
  return (shown - (scale.offset ?? 0)) / scale.factor;
};

/** "4,704 ft²", "29 °C", "85 %". Digits are the quantity's usual ones unless given. */
export const show = (si: number, quantity: Quantity, system: UnitSystem, digits = scaleOf(quantity, system).digits): string =>
  `${figure(toShown(si, quantity, system), digits)} ${unitOf(quantity, system)}`;

/** A number with thousands separated and a fixed count of decimals; never "−0". */
export const figure = (value: number, digits: number): string => {
  const text = Math.abs(value).toFixed(digits);
  const [whole, part] = text.split('.') as [string, string | undefined];
  const grouped = whole.replace(/\B(?=(\d{3})+(?!\d))/g, ',');
  const sign = value < 0 && Number(text) !== 0 ? '−' : '';
  return sign + grouped + (part === undefined ? '' : `.${part}`);
};

/**
 * Currencies whose minor unit is not the hundredth (ISO 4217, list one). They are written out because the number formats of browsers and
 * of Node follow usage, which differs from the standard for some.
 */
const otherMinorDigits: Readonly<Record<number, readonly string[]>> = {
  0: 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'.split(' '),
  3: 'BHD IQD JOD KWD LYD OMR TND'.split(' '),
  4: 'CLF UYW'.split(' '),
};
const digitsOf = new Map(
  Object.entries(otherMinorDigits).flatMap(([digits, currencies]) => currencies.map((one) => [one, Number(digits)] as const)),
);

/** Decimals of a currency: how many minor units make a whole one, as a power of ten. */
export const minorDigits = (currency: string): number => digitsOf.get(currency) ?? 2;

/** Minor units as whole units with the currency's code, "USD 12,340", for sentences and glances. */
export const showMoney = (minor: number, currency: string): string =>
  `${currency} ${figure(Math.round(minor / 10 ** minorDigits(currency)), 0)}`;
