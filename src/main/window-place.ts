import { readFileSync, renameSync, writeFileSync } from 'node:fs';

/** Where a window stood, in px of the desktop. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** How a window was left: its place while not maximised, and whether it was. */
export interface WindowPlace {
  readonly place: Place;
  readonly maximised: boolean;
}

/** The smallest the sheet can be read in, px. */
export const smallest = { width: 900, height: 600 } as const;
/** px of a window that must lie on a screen: enough to take hold of it. */
const grip = 80;

const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

/** What was kept; null where nothing was, or where it cannot be read. A window that opens elsewhere is no reason to stop. */
export const keptPlace = (file: string): WindowPlace | null => {
  try {
    const kept = JSON.parse(readFileSync(file, 'utf8')) as Partial<{ place: Partial<Place>; maximised: unknown }>;
    const { x, y, width, height } = kept.place ?? {};
    if (!isNumber(x) || !isNumber(y) || !isNumber(width) || !isNumber(height)) return null;
    if (width < smallest.width || height < smallest.height) return null;
    return { place: { x, y, width, height }, maximised: kept.maximised === true };
  } catch {
    return null;
  }
};

/** Keeps it for the next start, whole or not at all. */
export const keepPlace = (file: string, kept: WindowPlace): void => {
  try {
    writeFileSync(`${file}.new`, JSON.stringify(kept));
    renameSync(`${file}.new`, file);
  } catch {
    // A disk that is full or shut costs the place of the window, nothing else.
  }
};

/** Whether enough of a place lies on one of the screens there are now: one may have been taken away since. */
export const isReachable = (place: Place, screens: readonly Place[]): boolean =>
  screens.some(
    (screen) =>
      Math.min(place.x + place.width, screen.x + screen.width) - Math.max(place.x, screen.x) >= grip &&
      place.y >= screen.y - 1 &&
      place.y + grip <= screen.y + screen.height,
  );
