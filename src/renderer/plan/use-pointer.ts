import { useRef, type PointerEvent } from 'react';
import { middleOf, toCentimetre, turn, withCorner, withCornerAfter } from '#shared/geometry/moving.ts';
import { snapped } from '#shared/geometry/snapping.ts';
import type { Point } from '#shared/vocabulary/geometry.ts';
import { deskNow } from '../desk/desk.ts';
import { letGo } from '../desk/editing.ts';
import { shapeOf, withMove, withOutline, type Plot, type Shape } from '../desk/shapes.ts';
import type { View } from '../drawings/frame.ts';
import { draftingNow, draw, isDrawing } from './drafting.ts';
import { choose, chosenKey, dropHeld, finish, holdPlot, movedBy, place, plotNow, pointCross, targetsNow } from './drawing.ts';
import { keptWhere } from './site-plan.ts';
import type { SitePlan } from './site-plan-store.ts';
import type { PlanView } from './use-view.ts';

/** px within which something draws a point, and within which a trembling click is still a click. */
const reach = 9;
const tremble = 4;

interface Held {
  readonly x: number;
  readonly y: number;
  readonly from: Point;
  far: boolean;
}
type Hand = Held &
  (
    | { readonly does: 'pan'; readonly view: View }
    | { readonly does: 'place' }
    | { readonly does: 'move' | 'turn'; readonly plot: Plot; readonly shape: Shape }
    | { readonly does: 'corner'; readonly plot: Plot; readonly shape: Shape; readonly at: number }
    | { readonly does: 'picture'; readonly plan: SitePlan }
  );

interface Pinch {
  readonly apart: number;
  readonly middle: Point;
  readonly view: View;
}

const marked = (target: EventTarget, name: string): string | undefined =>
  (target as Element).closest<SVGElement>(`[data-${name}]`)?.dataset[name];

/** What a press takes hold of, by the tool and by what lies under it. */
const grasp = (target: EventTarget, held: Held, view: View): Hand => {
  const drafting = draftingNow();
  const { tool, sitePlan } = drafting;
  if (isDrawing(tool)) return { ...held, does: 'place' };
  if (tool === 'picture' && sitePlan) return { ...held, does: 'picture', plan: sitePlan };
  const plot = plotNow();
  if (tool !== 'move' || !plot) return { ...held, does: 'pan', view };
  const key = marked(target, 'shape');
  if (key) {
    const [part, id] = key.split(' ') as [Shape['part'], string];
    choose({ part, id });
  }
  const chosen = chosenKey(deskNow(), drafting);
  const shape = chosen && shapeOf(plot, chosen);
  if (!shape) return { ...held, does: 'pan', view };
  const [corner, side] = [marked(target, 'corner'), marked(target, 'side')];
  if (corner !== undefined) return { ...held, does: 'corner', plot, shape, at: Number(corner) };
  if (side !== undefined) {
    const outline = withCornerAfter(shape.outline, Number(side));
    const grown = withOutline(plot, shape.key, outline);
    return { ...held, does: 'corner', plot: grown, shape: { ...shape, outline }, at: Number(side) + 1 };
  }
  if (marked(target, 'turn') !== undefined) return { ...held, does: 'turn', plot, shape };
  return key ? { ...held, does: 'move', plot, shape } : { ...held, does: 'pan', view };
};

const angleOf = ([cx, cy]: Point, [x, y]: Point): number => (Math.atan2(y - cy, x - cx) * 180) / Math.PI;

/** Pointers on the plan: pan and pinch, and what the tools do. Alt lets go of everything that draws a point. */
export const usePointer = ({ view, pointOf, set }: PlanView) => {
  const hand = useRef<Hand | null>(null);
  const fingers = useRef(new Map<number, Point>());
  const pinch = useRef<Pinch | null>(null);
  const box = useRef<DOMRect | null>(null);

  const drag = (held: Hand, event: PointerEvent): void => {
    const point = pointOf(event.clientX, event.clientY);
    const near = event.altKey ? 0 : reach * view.scale;
    const by: Point = [point[0] - held.from[0], point[1] - held.from[1]];
    switch (held.does) {
      case 'pan': {
        const { scale, x, y } = held.view;
        return set({ scale, x: x - (event.clientX - held.x) * scale, y: y + (event.clientY - held.y) * scale });
      }
      case 'place':
        return void pointCross(point, near);
      case 'move':
        return holdPlot(movedBy(held.plot, held.shape, by, near), held.shape.key);
      case 'turn': {
        const middle = middleOf(held.shape.outline);
        const degrees = angleOf(middle, point) - angleOf(middle, held.from);
        const whole = event.altKey ? degrees : Math.round(degrees);
        return holdPlot(withMove(held.plot, held.shape.key, turn(whole, middle)), held.shape.key);
      }
      case 'corner': {
        const to = snapped(point, targetsNow(held.shape.key), near).point;
        return holdPlot(withOutline(held.plot, held.shape.key, withCorner(held.shape.outline, held.at, to)), held.shape.key);
      }
      case 'picture': {
        const { plan } = held;
        return draw({ sitePlan: { ...plan, x: toCentimetre(plan.x + by[0]), y: toCentimetre(plan.y + by[1]) } });
      }
    }
  };

  const spread = (): Omit<Pinch, 'view'> => {
    const [one, other] = [...fingers.current.values()] as [Point, Point];
    return {
      apart: Math.hypot(one[0] - other[0], one[1] - other[1]),
      middle: [(one[0] + other[0]) / 2, (one[1] + other[1]) / 2],
    };
  };

  const pinched = (begun: Pinch): void => {
    const { apart, middle } = spread();
    const scale = (begun.view.scale * begun.apart) / Math.max(1, apart);
    // The ground that was between the fingers stays between them.
    const held = (now: number, edge: number, size: number): number => now - edge - size / 2;
    const edge = box.current;
    if (!edge) return;
    const ground: Point = [
      begun.view.x + held(begun.middle[0], edge.left, edge.width) * begun.view.scale,
      begun.view.y - held(begun.middle[1], edge.top, edge.height) * begun.view.scale,
    ];
    set({
      scale,
      x: ground[0] - held(middle[0], edge.left, edge.width) * scale,
      y: ground[1] + held(middle[1], edge.top, edge.height) * scale,
    });
  };

  return {
    /** Whether the press has become a drag, so that the click after it chooses nothing. */
    wasDragged: (): boolean => hand.current?.far ?? false,
    letGo: (): boolean => {
      const holding = hand.current !== null && hand.current.does !== 'place';
      hand.current = null;
      letGo();
      return holding;
    },
    handlers: {
      onPointerDown: (event: PointerEvent<SVGSVGElement>): void => {
        box.current = event.currentTarget.getBoundingClientRect();
        fingers.current.set(event.pointerId, [event.clientX, event.clientY]);
        if (fingers.current.size === 2) {
          letGo();
          hand.current = null;
          pinch.current = { ...spread(), view };
          return;
        }
        if (event.button !== 0) return;
        const held: Held = { x: event.clientX, y: event.clientY, from: pointOf(event.clientX, event.clientY), far: false };
        hand.current = grasp(event.target, held, view);
        if (hand.current.does === 'place') place(pointCross(held.from, event.altKey ? 0 : reach * view.scale));
      },
      onPointerMove: (event: PointerEvent<SVGSVGElement>): void => {
        if (fingers.current.has(event.pointerId)) fingers.current.set(event.pointerId, [event.clientX, event.clientY]);
        if (pinch.current && fingers.current.size === 2) return pinched(pinch.current);
        const held = hand.current;
        if (!held || event.buttons === 0) {
          if (isDrawing(draftingNow().tool))
            pointCross(pointOf(event.clientX, event.clientY), event.altKey ? 0 : reach * view.scale);
          return;
        }
        if (!held.far && Math.hypot(event.clientX - held.x, event.clientY - held.y) < tremble) return;
        if (!held.far) event.currentTarget.setPointerCapture(event.pointerId);
        held.far = true;
        drag(held, event);
      },
      onPointerUp: (event: PointerEvent<SVGSVGElement>): void => {
        fingers.current.delete(event.pointerId);
        if (fingers.current.size < 2) pinch.current = null;
        const held = hand.current;
        hand.current = held && { ...held, does: 'pan', view };
        if (held?.far && held.does === 'picture') void keptWhere();
        else if (held?.far && held.does === 'place' && draftingNow().corners.length > 0)
          // Pressed, drawn out and let go: the second corner of a rectangle, of a tape, of a stretch.
          place(pointCross(pointOf(event.clientX, event.clientY), event.altKey ? 0 : reach * view.scale));
        else dropHeld();
        // The click that follows asks whether this was a drag; after that the hand is empty.
        setTimeout(() => (hand.current = null), 0);
      },
      onPointerCancel: (event: PointerEvent<SVGSVGElement>): void => {
        fingers.current.delete(event.pointerId);
        pinch.current = null;
        hand.current = null;
        letGo();
      },
      onDoubleClick: (): void => {
        if (['outline', 'route'].includes(draftingNow().tool)) finish();
      },
    },
  };
};
