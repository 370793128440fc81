import type { KeyboardEvent } from 'react';
import { middleOf, turn } from '#shared/geometry/moving.ts';
import { toGrid } from '#shared/geometry/snapping.ts';
import type { Point } from '#shared/vocabulary/geometry.ts';
import { deskNow, drawnForecast, show } from '../desk/desk.ts';
import { shapeOf, shapesOf, withMove } from '../desk/shapes.ts';
import { draftingNow, draw, isDrawing, takeTool } from './drafting.ts';
import {
  choose,
  chosenKey,
  copyChosen,
  drawnOn,
  dropHeld,
  finish,
  heldPlot,
  holdPlot,
  movedBy,
  place,
  removeChosen,
  takeBackCorner,
} from './drawing.ts';
import type { usePointer } from './use-pointer.ts';
import type { PlanView } from './use-view.ts';

const arrows: Readonly<Record<string, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
const turns: Readonly<Record<string, number>> = { '[': 1, ']': -1, '{': 15, '}': -15 };

/** Steps of the grid that Shift makes of one. */
const shifted = 10;

/** The next or the last zone in the order of the table, or of the shapes that are drawn. */
const chooseNext = (step: 1 | -1): void => {
  const desk = deskNow();
  const plot = heldPlot(desk);
  if (draftingNow().tool === 'move' && plot) {
    const shapes = shapesOf(plot, drawnOn(desk));
    const key = chosenKey(desk, draftingNow());
    const at = shapes.findIndex((shape) => shape.key.part === key?.part && shape.key.id === key.id);
    const next = shapes[(at + step + shapes.length) % shapes.length];
    if (next) choose(next.key);
    return;
  }
  const order = drawnForecast(desk)?.zones.map((one) => one.letter) ?? [];
  const at = order.indexOf(desk.zone ?? '');
  show({ zone: order[(at + step + order.length) % order.length] ?? null });
};

/** Moves or turns the chosen shape while the key is down; the release makes it one edit. */
const nudge = (key: string, steps: number): boolean => {
  const plot = heldPlot();
  const chosen = chosenKey(deskNow(), draftingNow());
  const shape = plot && chosen && shapeOf(plot, chosen);
  if (!plot || !shape) return false;
  const by = arrows[key];
  if (by) holdPlot(movedBy(plot, shape, [by[0] * steps, by[1] * steps], 0), shape.key);
  else if (turns[key] === undefined) return false;
  else holdPlot(withMove(plot, shape.key, turn(turns[key], middleOf(shape.outline))), shape.key);
  return true;
};

const moveCross = (key: string, steps: number, planView: PlanView): void => {
  const { cross, grid } = draftingNow();
  const from = cross ?? toGrid([planView.view.x, planView.view.y], grid);
  const by = arrows[key]!;
  draw({ cross: toGrid([from[0] + by[0] * steps, from[1] + by[1] * steps], grid), drawnTo: 'on the grid' });
};

/** Keys on the plan. Everything a pointer can do has one. */
export const useKeys = (planView: PlanView, pointer: ReturnType<typeof usePointer>) => {
  const { zoom, pan, set } = planView;
  const look: Readonly<Record<string, () => void>> = {
    '+': () => zoom(1 / 1.2),
    '=': () => zoom(1 / 1.2),
    '-': () => zoom(1.2),
    '0': () => set(null),
    PageDown: () => chooseNext(1),
    PageUp: () => chooseNext(-1),
  };
  /** Whether the key was taken. */
  const drawing = (event: KeyboardEvent): boolean => {
    const { cross, grid, corners, tool } = draftingNow();
    const steps = grid * (event.shiftKey ? shifted : 1);
    if (event.key in arrows) moveCross(event.key, steps, planView);
    else if (event.key === 'Enter' || event.key === ' ') place(cross ?? toGrid([planView.view.x, planView.view.y], grid));
    else if (event.key === 'Backspace') takeBackCorner();
    else if (event.key === 'Escape') {
      if (corners.length > 0) draw({ corners: [] });
      else takeTool('look');
    } else if (event.key === 'End' && tool !== 'tape') finish();
    else return false;
    return true;
  };
  const moving = (event: KeyboardEvent): boolean => {
    const { grid } = draftingNow();
    if (nudge(event.key, grid * (event.shiftKey ? shifted : 1))) return true;
    if (event.key === 'Delete') removeChosen();
    else if (event.key === 'c') copyChosen();
    else if (event.key === 'Escape') {
      if (!pointer.letGo()) takeTool('look');
    } else return false;
    return true;
  };
  const looking = (event: KeyboardEvent): boolean => {
    const by = arrows[event.key];
    if (by) pan(by[0] / 10, by[1] / 10);
    else if (event.key === 'Escape') return pointer.letGo();
    else return false;
    return true;
  };
  return {
    onKeyDown: (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey) return;
      const { tool } = draftingNow();
      const taken = isDrawing(tool) ? drawing(event) : tool === 'move' ? moving(event) : looking(event);
      if (!taken && !look[event.key]) return;
      event.preventDefault();
      if (!taken) look[event.key]!();
    },
    onKeyUp: (event: KeyboardEvent): void => {
      if (draftingNow().tool === 'move' && (event.key in arrows || event.key in turns)) dropHeld();
    },
    onBlur: (): void => {
      if (draftingNow().tool === 'move' && !pointer.wasDragged()) dropHeld();
    },
  };
};
