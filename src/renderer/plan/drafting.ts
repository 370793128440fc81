import { useSyncExternalStore } from 'react';
import type { ZoneUse } from '#shared/vocabulary/booking.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Point } from '#shared/vocabulary/geometry.ts';
import type { ShapeKey } from '../desk/shapes.ts';
import type { SitePlan } from './site-plan-store.ts';

/** What the pointer and the arrow keys do on the plan. `scale` and `picture` set out the site plan beneath. */
export const tools = ['look', 'move', 'rectangle', 'outline', 'route', 'tape'] as const;
export type Tool = (typeof tools)[number] | 'scale' | 'picture';

export const isDrawing = (tool: Tool): boolean => ['rectangle', 'outline', 'route', 'tape', 'scale'].includes(tool);

/** Another way to do the event, laid beside the one on the sheet. */
export interface Beside {
  readonly words: string;
  readonly booking: Booking;
  readonly forecast: Forecast;
  /** How they are shown: one over the other with a slider, or both in halves. */
  readonly way: 'slider' | 'halves';
  /** Share of the width from the left that shows the one on the sheet. */
  readonly share: number;
}

/** The drawing board beside the plan: what is in hand and how it is drawn. Nothing here is stored with the booking. */
export interface Drafting {
  readonly tool: Tool;
  /** The chosen shape of the venue's ground; a footprint is chosen by the desk's zone. */
  readonly chosen: ShapeKey | null;
  /** Corners set so far of what is being drawn. */
  readonly corners: readonly Point[];
  /** Where the next corner would lie: under the pointer, or where the arrow keys have taken the cross. */
  readonly cross: Point | null;
  /** What drew the cross. */
  readonly drawnTo: string | null;
  readonly snap: { readonly shapes: boolean; readonly marks: boolean; readonly grid: boolean };
  /** m between the lines of the grid; also a step of the arrow keys. */
  readonly grid: number;
  /** m */
  readonly routeWidth: number;
  readonly newUse: ZoneUse;
  readonly newPart: 'standing-zone' | 'stand';
  readonly sitePlan: SitePlan | null;
  readonly beside: Beside | null;
  /** What happened last, for eyes and screen readers. */
  readonly said: string;
}

let drafting: Drafting = {
  tool: 'look',
  chosen: null,
  corners: [],
  cross: null,
  drawnTo: null,
  snap: { shapes: true, marks: true, grid: true },
  grid: 0.5,
  routeWidth: 5,
  newUse: 'other',
  newPart: 'standing-zone',
  sitePlan: null,
  beside: null,
  said: '',
};
const readers = new Set<() => void>();

export const draftingNow = (): Drafting => drafting;

export const draw = (changed: Partial<Drafting>): void => {
  drafting = { ...drafting, ...changed };
  for (const read of readers) read();
};

export const useDrafting = (): Drafting =>
  useSyncExternalStore(
    (read) => {
      readers.add(read);
      return () => readers.delete(read);
    },
    () => drafting,
  );

export const takeTool = (tool: Tool): void => draw({ tool, corners: [], cross: null, drawnTo: null, said: '' });
