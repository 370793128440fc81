import { figure, toShown, toSI, unitOf, type Quantity, type UnitSystem } from '#shared/units/quantity.ts';
import type { SpotReading } from '#shared/vocabulary/inspection.ts';

/** Readings that are one number each; hardness has its own fields. */
export type PlainReading = Exclude<keyof SpotReading, 'zone' | 'point' | 'hardness'>;

export interface ReadingKind {
  readonly key: PlainReading;
  readonly words: string;
  /** Null where the number has a unit of its own or none. */
  readonly quantity: Quantity | null;
  readonly unit: string;
  /** One press of plus or minus, as shown; by system of units. */
  readonly step: Readonly<Record<UnitSystem, number>>;
  readonly digits: Readonly<Record<UnitSystem, number>>;
  /** Where the first press begins, SI. */
  readonly begin: number;
}

const both = (value: number) => ({ us: value, si: value });

/** In the order one reads them at a spot. */
export const readingKinds: readonly ReadingKind[] = [
  { key: 'cover', words: 'Live cover', quantity: 'share', unit: '', step: both(5), digits: both(0), begin: 0.9 },
  {
    key: 'colour',
    words: 'Colour, 1 straw to 9 dark green',
    quantity: null,
    unit: '',
    step: both(0.5),
    digits: both(1),
    begin: 6,
  },
  { key: 'moisture', words: 'Water by volume', quantity: 'share', unit: '', step: both(1), digits: both(0), begin: 0.2 },
  {
    key: 'rut',
    words: 'Deepest rut',
    quantity: 'smallLength',
    unit: '',
    step: { us: 0.25, si: 5 },
    digits: { us: 2, si: 0 },
    begin: 0,
  },
  { key: 'traction', words: 'Traction', quantity: null, unit: 'N·m', step: both(1), digits: both(0), begin: 40 },
  {
    key: 'penetration',
    words: 'Penetration',
    quantity: 'pressure',
    unit: '',
    step: { us: 10, si: 50 },
    digits: both(0),
    begin: 1000,
  },
  {
    key: 'infiltration',
    words: 'Infiltration',
    quantity: 'rain',
    unit: '/h',
    step: { us: 0.5, si: 10 },
    digits: { us: 1, si: 0 },
    begin: 150,
  },
  {
    key: 'canopyTemperature',
    words: 'Canopy temperature',
    quantity: 'temperature',
    unit: '',
    step: both(1),
    digits: both(0),
    begin: 25,
  },
  {
    key: 'soilTemperature',
    words: 'Soil temperature',
    quantity: 'temperature',
    unit: '',
    step: both(1),
    digits: both(0),
    begin: 20,
  },
  {
    key: 'greenIndex',
    words: 'Dark green colour index',
    quantity: null,
    unit: '',
    step: both(0.05),
    digits: both(2),
    begin: 0.5,
  },
];

export const unitFor = ({ quantity, unit }: ReadingKind, units: UnitSystem): string =>
  quantity === null ? unit : `${unitOf(quantity, units)}${unit}`;

export const shownFor = ({ quantity }: ReadingKind, si: number, units: UnitSystem): number =>
  quantity === null ? si : toShown(si, quantity, units);

export const typedFor = ({ quantity }: ReadingKind, typed: number, units: UnitSystem): number =>
  quantity === null ? typed : toSI(typed, quantity, units);

/** "cover 62 %, rut 12 mm, hardness 84 g": everything read at a spot. */
export const spotWords = (spot: SpotReading, units: UnitSystem): string =>
  [
    ...readingKinds.flatMap((kind) => {
      const value = spot[kind.key];
      if (value === null) return [];
      const name = kind.words.split(',')[0]!.toLowerCase();
      return [`${name} ${figure(shownFor(kind, value, units), kind.digits[units])} ${unitFor(kind, units)}`.trim()];
    }),
    ...(spot.hardness === null
      ? []
      : [
          `hardness ${spot.hardness.peak} g (${spot.hardness.hammerMass} kg from ${spot.hardness.dropHeight} m, drop ${spot.hardness.dropNumber})`,
        ]),
  ].join(', ');
