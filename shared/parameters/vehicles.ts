import type { Vehicle } from '#shared/vocabulary/vehicle.ts';
import type { Standing } from '#shared/sources/standing.ts';
import type { SourceId } from '#shared/sources/sources.ts';

/**
 * Classes of machine to start from. Weights are what such machines commonly weigh (common practice, from memory; the axle shares of
 * the forklifts and the road limits of the lorry are recalled from EN 1991-1-1 and 23 CFR 658). They stand for no maker's machine:
 * a venue enters the sheet of the machine that comes. Contact pressure is tyre inflation or pad pressure, mean under one wheel.
 */
export const vehicles = [
  {
    id: 'mower',
    name: 'Ride-on mower, turf tyres',
    weight: 9,
    axles: [
      { load: 5.4, wheels: 2, contactPressure: 45 },
      { load: 3.6, wheels: 2, contactPressure: 45 },
    ],
    track: 1.2,
    skids: false,
  },
  {
    id: 'utility-cart',
    name: 'Utility cart on turf tyres, loaded',
    weight: 11,
    axles: [
      { load: 4, wheels: 2, contactPressure: 45 },
      { load: 7, wheels: 2, contactPressure: 47 },
    ],
    track: 1.2,
    skids: false,
  },
  {
    id: 'tractor-45-hp',
    name: 'Tractor up to 45 hp on turf tyres',
    weight: 19,
    axles: [
      { load: 7, wheels: 2, contactPressure: 47 },
      { load: 12, wheels: 2, contactPressure: 47 },
    ],
    track: 1.4,
    skids: false,
  },
  {
    id: 'sod-installer',
    name: 'Big-roll sod installer on tracks, with a roll',
    weight: 24,
    axles: [
      { load: 12, wheels: 2, contactPressure: 35 },
      { load: 12, wheels: 2, contactPressure: 35 },
    ],
    track: 1.3,
    skids: true,
  },
  {
    id: 'skid-steer',
    name: 'Skid-steer loader, loaded',
    weight: 38,
    axles: [
      { load: 24, wheels: 2, contactPressure: 240 },
      { load: 14, wheels: 2, contactPressure: 240 },
    ],
    track: 1.4,
    skids: true,
  },
  {
    id: 'pickup',
    name: 'Pickup truck, loaded',
    weight: 32,
    axles: [
      { load: 14, wheels: 2, contactPressure: 250 },
      { load: 18, wheels: 2, contactPressure: 300 },
    ],
    track: 1.7,
    skids: false,
  },
  {
    id: 'forklift-small',
    name: 'Forklift 1.5 t, loaded',
    weight: 46,
    axles: [
      { load: 40, wheels: 2, contactPressure: 700 },
      { load: 6, wheels: 2, contactPressure: 500 },
    ],
    track: 0.95,
    skids: false,
  },
  {
    id: 'forklift-large',
    name: 'Forklift 4 t, loaded',
    weight: 100,
    axles: [
      { load: 90, wheels: 4, contactPressure: 700 },
      { load: 10, wheels: 2, contactPressure: 600 },
    ],
    track: 1.2,
    skids: false,
  },
  {
    id: 'telehandler',
    name: 'Telehandler 4 t, loaded',
    weight: 145,
    axles: [
      { load: 100, wheels: 2, contactPressure: 450 },
      { load: 45, wheels: 2, contactPressure: 400 },
    ],
    track: 1.9,
    skids: false,
  },
  {
    id: 'articulated-lorry',
    name: 'Articulated lorry, five axles, loaded',
    weight: 356,
    axles: [
      { load: 54, wheels: 2, contactPressure: 760 },
      { load: 75.5, wheels: 4, contactPressure: 760 },
      { load: 75.5, wheels: 4, contactPressure: 760 },
      { load: 75.5, wheels: 4, contactPressure: 760 },
      { load: 75.5, wheels: 4, contactPressure: 760 },
    ],
    track: 2.05,
    skids: false,
  },
  {
    id: 'crane-on-road',
    name: 'All-terrain crane on the road, four axles',
    weight: 471,
    axles: [
      { load: 117.75, wheels: 2, contactPressure: 900 },
      { load: 117.75, wheels: 2, contactPressure: 900 },
      { load: 117.75, wheels: 2, contactPressure: 900 },
      { load: 117.75, wheels: 2, contactPressure: 900 },
    ],
    track: 2.3,
    skids: false,
  },
  {
    id: 'crane-outriggers',
    name: 'Crane set up on outriggers, pads of 0.6 m, lifting',
    weight: 600,
    axles: [
      { load: 420, wheels: 2, contactPressure: 580 },
      { load: 180, wheels: 2, contactPressure: 250 },
    ],
    track: 6,
    skids: false,
    standing: 12,
  },
  {
    id: 'crane-on-mats',
    name: 'Crane set up on outriggers, timber mats of 2.4 m, lifting',
    weight: 600,
    axles: [
      { load: 420, wheels: 2, contactPressure: 580, mat: { side: 2.4, thickness: 0.2, modulus: 9000 } },
      { load: 180, wheels: 2, contactPressure: 250, mat: { side: 2.4, thickness: 0.2, modulus: 9000 } },
    ],
    track: 6,
    skids: false,
    standing: 12,
  },
] as const satisfies readonly Vehicle[];

export type StartingVehicle = (typeof vehicles)[number]['id'];

/** Where the weights above come from. */
export const vehiclesStanding: Standing = 'common practice';

/** One class of forklift of the code: weights in kN, sizes in m. */
export interface ForkliftClass {
  readonly name: string;
  readonly netWeight: number;
  readonly hoistLoad: number;
  readonly axleLoad: number;
  readonly gauge: number;
  readonly width: number;
  readonly length: number;
}

/** EN 1991-1-1:2002, Tables 6.5 and 6.6, recalled. */
export const forkliftClasses: {
  readonly standing: Standing;
  readonly source: SourceId;
  readonly classes: readonly ForkliftClass[];
} = {
  standing: 'recalled',
  source: 'en-1991-1-1',
  classes: [
    { name: 'FL1', netWeight: 21, hoistLoad: 10, axleLoad: 26, gauge: 0.85, width: 1, length: 2.6 },
    { name: 'FL2', netWeight: 31, hoistLoad: 15, axleLoad: 40, gauge: 0.95, width: 1.1, length: 3 },
    { name: 'FL3', netWeight: 44, hoistLoad: 25, axleLoad: 63, gauge: 1, width: 1.2, length: 3.3 },
    { name: 'FL4', netWeight: 60, hoistLoad: 40, axleLoad: 90, gauge: 1.2, width: 1.4, length: 4 },
    { name: 'FL5', netWeight: 90, hoistLoad: 60, axleLoad: 140, gauge: 1.5, width: 1.9, length: 4.6 },
    { name: 'FL6', netWeight: 110, hoistLoad: 80, axleLoad: 170, gauge: 1.8, width: 2.3, length: 5.1 },
  ],
};
