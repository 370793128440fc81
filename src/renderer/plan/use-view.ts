import { useEffect, useRef, useState, type RefObject } from 'react';
import type { Point } from '#shared/vocabulary/geometry.ts';
import { viewOf, zoomed, type Bounds, type View } from '../drawings/frame.ts';

export interface Box {
  readonly width: number;
  readonly height: number;
}

/** m to a pixel: a zoom goes no closer than 5 mm and no further than 5 m. */
const [closest, furthest] = [0.005, 5];

export interface PlanView {
  readonly view: View;
  /** Whether the person has moved it. */
  readonly moved: boolean;
  /** The ground under a point of the window. */
  readonly pointOf: (clientX: number, clientY: number) => Point;
  readonly set: (view: View | null) => void;
  readonly zoom: (factor: number, about?: Point) => void;
  /** Shares of the box. */
  readonly pan: (right: number, up: number) => void;
}

/**
 * What the plan shows of the ground: all of it until the person pans or zooms. The wheel zooms about the pointer.
 * @param around m of ground shown around it
 */
export const useView = (svg: RefObject<SVGSVGElement | null>, box: Box, ground: Bounds, around: number): PlanView => {
  const [own, setOwn] = useState<View | null>(null);
  const view = own ?? viewOf(ground, box, around);
  const pointOf = (clientX: number, clientY: number): Point => {
    const edge = svg.current!.getBoundingClientRect();
    return [
      view.x + (clientX - edge.left - edge.width / 2) * view.scale,
      view.y - (clientY - edge.top - edge.height / 2) * view.scale,
    ];
  };
  const zoom = (factor: number, about?: Point): void => {
    const scale = Math.min(furthest, Math.max(closest, view.scale * factor));
    setOwn(zoomed(view, scale / view.scale, about));
  };
  const onWheel = useRef((_event: WheelEvent): void => undefined);
  onWheel.current = (event) => {
    event.preventDefault();
    zoom(1.0012 ** Math.max(-240, Math.min(240, event.deltaY)), pointOf(event.clientX, event.clientY));
  };
  useEffect(() => {
    const drawing = svg.current;
    // React listens to the wheel without the right to hold the page still.
    const listen = (event: WheelEvent): void => onWheel.current(event);
    drawing?.addEventListener('wheel', listen, { passive: false });
    return () => drawing?.removeEventListener('wheel', listen);
  }, [svg]);
  return {
    view,
    moved: own !== null,
    pointOf,
    set: setOwn,
    zoom,
    pan: (right, up) => setOwn({ ...view, x: view.x + right * box.width * view.scale, y: view.y + up * box.height * view.scale }),
  };
};
