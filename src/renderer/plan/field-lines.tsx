import { memo } from 'react';
import { paintedLines } from '#shared/geometry/field-layouts.ts';
import type { FieldLines as Lines } from '#shared/vocabulary/venue.ts';

/** The lines of the home game as they are painted. */
export const FieldLines = memo(({ lines }: { lines: Lines }) => (
  <path
    className="field-lines"
    d={paintedLines(lines)
      .map((line) => line.map(([x, y], at) => `${at === 0 ? 'M' : 'L'}${x} ${-y}`).join(''))
      .join('')}
  />
));
