/**
 * What a column of a CSV file holds, from its header: a name and perhaps a unit, as in `Tmax (°C)`, `rain [in]`, `wind_mph`,
 * `wind (m/s at 10 m)`. Without a unit the column is read in the first unit of its kind below, and the report says so.
 */
export const csvQuantities = [
  'date',
  'year',
  'month',
  'day',
  'maximum',
  'minimum',
  'rain',
  'radiation',
  'sunshine',
  'vapourPressure',
  'dewPoint',
  'humidity',
  'wind',
] as const;
export type CsvQuantity = (typeof csvQuantities)[number];

const names: Readonly<Record<CsvQuantity, readonly string[]>> = {
  date: ['date', 'datum', 'localdate', 'obsdate'],
  year: ['year', 'yr', 'yyyy'],
  month: ['month', 'mo'],
  day: ['day', 'dy', 'dayofmonth'],
  maximum: [
    'tmax',
    'tx',
    'maximum',
    'max',
    'high',
    'maxtemp',
    'tempmax',
    'maxt',
    'maximumtemperature',
    'maxtemperature',
    'temperaturemax',
    'temperaturemaximum',
    'airtemperaturemax',
    'maximumairtemperature',
  ],
  minimum: [
    'tmin',
    'tn',
    'minimum',
    'min',
    'low',
    'mintemp',
    'tempmin',
    'mint',
    'minimumtemperature',
    'mintemperature',
    'temperaturemin',
    'temperatureminimum',
    'airtemperaturemin',
    'minimumairtemperature',
  ],
  rain: ['rain', 'rainfall', 'precipitation', 'precip', 'prcp', 'rr', 'pcp', 'totalprecipitation'],
  radiation: [
    'radiation',
    'rs',
    'srad',
    'rad',
    'solar',
    'solarradiation',
    'globalradiation',
    'shortwave',
    'shortwaveradiation',
    'ghi',
  ],
  sunshine: ['sunshine', 'sun', 'sunshinehours', 'sunshineduration', 'sunhours'],
  vapourPressure: ['vapourpressure', 'vaporpressure', 'vp', 'vap', 'ea'],
  dewPoint: ['dewpoint', 'tdew', 'td', 'dewp', 'dewpointtemperature', 'dew'],
  humidity: ['humidity', 'rh', 'relativehumidity', 'meanhumidity', 'rhmean', 'relhum', 'meanrelativehumidity'],
  wind: ['wind', 'windspeed', 'ws', 'u', 'meanwind', 'meanwindspeed', 'windmean', 'wnd'],
};

/** A linear way from the file's unit to ours: value × factor + offset. */
interface Unit {
  readonly names: readonly string[];
  readonly factor: number;
  readonly offset: number;
}
const unit = (factor: number, ...unitNames: string[]): Unit => ({ names: unitNames, factor, offset: 0 });

const temperatures: readonly Unit[] = [
  unit(1, 'c', 'degc', 'celsius', 'degreesc', 'degreecelsius'),
  { names: ['f', 'degf', 'fahrenheit', 'degreesf'], factor: 5 / 9, offset: -160 / 9 },
  { names: ['k', 'kelvin'], factor: 1, offset: -273.15 },
];
const none: readonly Unit[] = [unit(1, '')];

/** The first unit of each list is the one taken when the header names none. */
const units: Readonly<Record<CsvQuantity, readonly Unit[]>> = {
  date: none,
  year: none,
  month: none,
  day: none,
  maximum: temperatures,
  minimum: temperatures,
  dewPoint: temperatures,
  rain: [unit(1, 'mm', 'mm/d', 'mm/day', 'l/m2', 'kg/m2'), unit(25.4, 'in', 'inch', 'inches'), unit(10, 'cm')],
  radiation: [
    unit(1, 'mj/m2/d', 'mj/m2', 'mj', 'mj/m2/day', 'mjm-2', 'mjm2', 'mjm-2d-1'),
    unit(0.0864, 'w/m2', 'wm-2', 'wm2'),
    unit(0.001, 'kj/m2', 'kj/m2/d', 'kj/m2/day', 'kj'),
    unit(0.0036, 'wh/m2', 'wh/m2/d', 'wh/m2/day'),
    unit(3.6, 'kwh/m2', 'kwh/m2/d', 'kwh/m2/day'),
    unit(0.01, 'j/cm2', 'j/cm2/d'),
    unit(0.04184, 'ly', 'langley', 'langleys', 'cal/cm2'),
  ],
  sunshine: [unit(1, 'h', 'hr', 'hrs', 'hours', 'hour'), unit(1 / 60, 'min', 'minutes')],
  vapourPressure: [unit(1, 'kpa'), unit(0.1, 'hpa', 'mbar', 'mb'), unit(0.001, 'pa')],
  humidity: [unit(0.01, '%', 'percent', 'pct'), unit(1, '1', 'share', 'fraction', '0-1', '0–1')],
  wind: [
    unit(1, 'm/s', 'ms-1', 'ms', 'mps', 'm/sec'),
    unit(1 / 3.6, 'km/h', 'kmh', 'kph', 'kmh-1'),
    unit(0.44704, 'mph', 'mi/h'),
    unit(0.514444, 'kn', 'kt', 'kts', 'knots'),
  ],
};

export interface CsvColumn {
  /** As the file has it. */
  readonly header: string;
  readonly quantity: CsvQuantity;
  /** Unit in the words of the list above. */
  readonly unit: string;
  readonly unitNamed: boolean;
  readonly factor: number;
  readonly offset: number;
  /** Height of a wind reading, m; 2 for all else. */
  readonly height: number;
}

const plain = (text: string): string =>
  text.toLowerCase().replaceAll('²', '2').replaceAll('⁻', '-').replaceAll('¹', '1').replaceAll('°', '').replaceAll('º', '');
const word = (text: string): string => plain(text).replace(/[^a-z0-9]/g, '');
const unitWord = (text: string): string =>
  plain(text)
    .replace(/[\s·*.]/g, '')
    .replaceAll('^', '');

const quantityOf = (name: string): CsvQuantity | null => csvQuantities.find((each) => names[each].includes(name)) ?? null;
const unitOf = (quantity: CsvQuantity, name: string): Unit | null =>
  units[quantity].find((each) => each.names.includes(name)) ?? null;

/** Takes the height of the instrument out of a header: `u10`, `wind 10m`, `(m/s at 2 m)`. */
const heightIn = (header: string): { readonly rest: string; readonly height: number | null } => {
  const at = /\bat\s+(\d+(?:\.\d+)?)\s*m\b/i.exec(header) ?? /(?<![\d.])(\d+(?:\.\d+)?)\s?m(?![a-z/\d])/i.exec(header);
  if (at !== null) return { rest: header.replace(at[0], ' '), height: Number(at[1]) };
  const short = /^\s*(u|ws)_?(2|3|10)(?=$|[\s_([])/i.exec(header);
  return short === null
    ? { rest: header, height: null }
    : { rest: header.replace(/^(\s*(?:u|ws))_?(?:2|3|10)/i, '$1'), height: Number(short[2]) };
};

export type ColumnReading =
  | { readonly kind: 'column'; readonly column: CsvColumn }
  | { readonly kind: 'unknown' }
  | { readonly kind: 'refused'; readonly reason: string };

const columnOf = (header: string, quantity: CsvQuantity, named: Unit | null, height: number): ColumnReading => {
  const taken = named ?? units[quantity][0]!;
  return {
    kind: 'column',
    column: {
      header,
      quantity,
      unit: taken.names[0]!,
      unitNamed: named !== null,
      factor: taken.factor,
      offset: taken.offset,
      height,
    },
  };
};

/** Reads one header. */
export const columnFrom = (header: string): ColumnReading => {
  const { rest, height: found } = heightIn(header);
  const bracket = /^(.*?)[([]([^)\]]*)[)\]]\s*$/.exec(rest);
  const name = bracket === null ? rest : bracket[1]!;
  const height = found ?? 2;
  const direct = quantityOf(word(name));
  if (direct !== null) {
    const written = bracket === null ? '' : unitWord(bracket[2]!);
    if (written === '') return columnOf(header, direct, null, height);
    const named = unitOf(direct, written);
    if (named !== null) return columnOf(header, direct, named, height);
    const known = units[direct].map((each) => each.names[0]).join(', ');
    return { kind: 'refused', reason: `the unit "${bracket![2]!.trim()}" is not known for it; use one of ${known}` };
  }
  // A unit as the last part of the name: tmax_f, rain mm.
  const parts = name.trim().split(/[\s_]+/);
  for (let cut = parts.length - 1; cut > 0; cut--) {
    const quantity = quantityOf(word(parts.slice(0, cut).join('')));
    const named = quantity === null ? null : unitOf(quantity, unitWord(parts.slice(cut).join('')));
    if (quantity !== null && named !== null) return columnOf(header, quantity, named, height);
  }
  return { kind: 'unknown' };
};
