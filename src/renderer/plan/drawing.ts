import { paintedLines } from '#shared/geometry/field-layouts.ts';
import { rectangleOf, shift, type Move } from '#shared/geometry/moving.ts';
import { polygonArea } from '#shared/geometry/polygon.ts';
import { selfCrossing } from '#shared/geometry/rings.ts';
import { routeAlong } from '#shared/geometry/route.ts';
import { snapped, snappedShift, type Snapped, type SnapTargets } from '#shared/geometry/snapping.ts';
import { zoneUseWords } from '#shared/wording/words.ts';
import type { Point, Polygon } from '#shared/vocabulary/geometry.ts';
import { deskNow, drawnBooking, drawnGround, show, type Desk } from '../desk/desk.ts';
import { drop, edit, editGround, hold, holdGround } from '../desk/editing.ts';
import {
  isSame,
  shapeOf,
  shapesOf,
  withCopy,
  withMove,
  withNew,
  withOutline,
  without,
  type DrawnOn,
  type Plot,
  type Shape,
  type ShapeKey,
} from '../desk/shapes.ts';
import { draftingNow, draw, takeTool, type Drafting } from './drafting.ts';

/** Acts of drawing: what a pointer, a key and a button of the drawing board all come to. */

/** On the venue's page its ground is drawn, everywhere else the event. */
export const drawnOn = ({ verb }: Desk): DrawnOn => (verb === 'venue' ? 'venue' : 'event');

/** Everything with an outline as it stands on the sheet, before what is being dragged. */
export const plotNow = (desk: Desk = deskNow()): Plot | null => {
  const ground = drawnGround({ ...desk, heldGround: null });
  return ground && { booking: desk.booking, ground };
};

/** The same with what is being dragged where the hand has it. */
export const heldPlot = (desk: Desk = deskNow()): Plot | null => {
  const ground = drawnGround(desk);
  return ground && { booking: drawnBooking(desk), ground };
};

export const chosenKey = (desk: Desk, { chosen }: Drafting): ShapeKey | null =>
  drawnOn(desk) === 'venue' ? chosen : desk.zone === null ? null : { part: 'footprint', id: desk.zone };

export const chosenShape = (desk: Desk, drafting: Drafting): Shape | undefined => {
  const [plot, key] = [heldPlot(desk), chosenKey(desk, drafting)];
  return plot && key ? shapeOf(plot, key) : undefined;
};

export const choose = (key: ShapeKey): void => {
  const letter = heldPlot() && shapeOf(heldPlot()!, key)?.letter;
  if (key.part !== 'footprint') draw({ chosen: key });
  if (letter) show({ zone: letter });
};

const isGround = ({ part }: ShapeKey): boolean => part !== 'footprint';

/** Shows a plot while a shape of it is dragged. */
export const holdPlot = (plot: Plot, key: ShapeKey): void => {
  if (isGround(key)) holdGround(plot.ground);
  else if (plot.booking) hold(plot.booking);
};

/** Takes a plot as an edit, for undo. */
export const editPlot = (plot: Plot, key: ShapeKey): void => {
  if (isGround(key)) editGround(plot.ground);
  else if (plot.booking) edit(plot.booking);
};

export const dropHeld = drop;

/** What draws a point: other shapes, the lines of the field, the grid. @param except the shape that is being moved */
export const targetsNow = (except: ShapeKey | null): SnapTargets => {
  const { snap, grid } = draftingNow();
  const plot = heldPlot();
  if (!plot) return { rings: [], marks: [], grid: null };
  const others = [...shapesOf(plot, 'event'), ...shapesOf(plot, 'venue')].filter((shape) => !isSame(shape.key, except));
  return {
    rings: snap.shapes ? others.map((shape) => shape.outline) : [],
    marks: snap.marks && plot.ground.lines ? paintedLines(plot.ground.lines) : [],
    grid: snap.grid ? grid : null,
  };
};

const snapWords = { corner: 'on a corner', mark: 'on a line of the field', edge: 'on an edge', grid: 'on the grid' } as const;
export const wordsOf = ({ to }: Pick<Snapped, 'to'>): string | null => (to === null ? null : snapWords[to]);

/** Puts the cross where the pointer is, drawn to what lies within reach, m. */
export const pointCross = (point: Point, reach: number): Point => {
  const found = snapped(point, targetsNow(null), reach);
  draw({ cross: found.point, drawnTo: wordsOf(found) });
  return found.point;
};

/** A plot with a shape moved so far, and a little further where something draws it. */
export const movedBy = (plot: Plot, shape: Shape, [right, up]: Point, reach: number): Plot => {
  const by: Move = shift(right, up);
  const further = reach > 0 ? snappedShift(shape.outline.map(by), targetsNow(shape.key), reach) : { right: 0, up: 0 };
  return withMove(plot, shape.key, shift(right + further.right, up + further.up));
};

/** What a tool makes of its corners; null while there are too few. */
export const shapeInHand = ({ tool, corners, cross, routeWidth }: Drafting): Polygon | null => {
  const all = cross && corners.length > 0 ? [...corners, cross] : corners;
  if (tool === 'rectangle') return all.length < 2 ? null : rectangleOf(all[0]!, all[1]!);
  if (tool === 'route') return routeAlong(all, routeWidth);
  return tool === 'outline' && all.length >= 3 ? all : null;
};

/** m²; less is a slip of the hand. */
const smallest = 0.25;

const trouble = (outline: Polygon | null): string | null => {
  if (outline === null) return 'Set more corners first.';
  if (selfCrossing(outline)) return 'Its sides cross; take the last corner back.';
  return polygonArea(outline) < smallest ? 'It encloses no ground; draw it larger.' : null;
};

/** Ends what is being drawn and puts it on the sheet. */
export const finish = (): void => {
  const drafting = draftingNow();
  if (drafting.tool === 'tape' || drafting.tool === 'scale') return;
  const outline = shapeInHand({ ...drafting, cross: null });
  const plot = plotNow();
  const wrong = trouble(outline);
  if (wrong !== null || !plot || !outline) return draw({ said: wrong ?? '' });
  const route = drafting.tool === 'route';
  const use = route && !['cable-run', 'egress', 'chiller-line'].includes(drafting.newUse) ? 'haul-route' : drafting.newUse;
  const footprint = drawnOn(deskNow()) === 'event';
  const words = footprint ? (use === 'other' ? 'footprint' : zoneUseWords[use]) : drafting.newPart === 'stand' ? 'stand' : 'zone';
  const added = withNew(plot, {
    part: footprint ? 'footprint' : drafting.newPart,
    letter: null,
    name: words[0]!.toUpperCase() + words.slice(1),
    use: footprint ? use : null,
    outline,
  });
  if (!added) return draw({ said: 'Open or begin a booking first: footprints belong to one.', corners: [] });
  editPlot(added.plot, added.key);
  takeTool('move');
  choose(added.key);
};

/** Sets the next corner. A rectangle, a tape and the two points of a scale end with their second. */
export const place = (point: Point): void => {
  const { tool, corners } = draftingNow();
  const last = corners.at(-1);
  if (last && last[0] === point[0] && last[1] === point[1]) return finish();
  const full = (tool === 'tape' || tool === 'scale') && corners.length >= 2;
  draw({ corners: full ? [point] : [...corners, point], said: '' });
  if (tool === 'rectangle' && corners.length === 1) finish();
};

export const takeBackCorner = (): void => draw({ corners: draftingNow().corners.slice(0, -1) });

/** Removes, copies or changes the chosen shape as one edit. */
export const change = (how: (plot: Plot, shape: Shape) => Plot): void => {
  const [desk, plot] = [deskNow(), plotNow()];
  const key = chosenKey(desk, draftingNow());
  const shape = plot && key && shapeOf(plot, key);
  if (plot && shape) editPlot(how(plot, shape), shape.key);
};

export const changeOutline = (how: (outline: Polygon) => Polygon): void =>
  change((plot, shape) => withOutline(plot, shape.key, how(shape.outline)));

export const removeChosen = (): void => {
  change((plot, shape) => without(plot, shape.key));
  draw({ chosen: null });
};

/** m that a copy lies beside its first. */
const beside = 3;

export const copyChosen = (): void => {
  const [desk, plot] = [deskNow(), plotNow()];
  const key = chosenKey(desk, draftingNow());
  const added = plot && key && withCopy(plot, key, shift(beside, -beside));
  if (!added) return;
  editPlot(added.plot, added.key);
  choose(added.key);
};
