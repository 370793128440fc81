import { useId, type ReactNode } from 'react';
import type { View } from '../drawings/frame.ts';
import type { Beside } from './drafting.ts';
import type { Box } from './use-view.ts';

/** The sheet on the left, another way on the right: cut at a line over the same ground, or each whole in its half. */
export const TwoWays = ({
  beside,
  view,
  box,
  sheet,
  children,
}: {
  beside: Beside;
  view: View;
  box: Box;
  sheet: ReactNode;
  children: ReactNode;
}) => {
  const [left, right] = [useId(), useId()];
  const { scale } = view;
  const [width, height] = [box.width * scale, box.height * scale];
  const [x, y] = [view.x - width / 2, -view.y - height / 2];
  const halves = beside.way === 'halves';
  const share = halves ? 0.5 : beside.share;
  const cut = x + width * share;
  const aside = halves ? width / 4 : 0;
  const size = 11 * scale;
  return (
    <>
      <clipPath id={left}>
        <rect x={x} y={y} width={width * share} height={height} />
      </clipPath>
      <clipPath id={right}>
        <rect x={cut} y={y} width={width * (1 - share)} height={height} />
      </clipPath>
      <g clipPath={`url(#${left})`}>
        <g transform={`translate(${-aside} 0)`}>{sheet}</g>
      </g>
      <g clipPath={`url(#${right})`}>
        <g transform={`translate(${aside} 0)`}>{children}</g>
      </g>
      <g className="two-ways" fontSize={size} strokeWidth={3 * scale}>
        <path d={`M${cut} ${y}v${height}`} strokeWidth={1.5 * scale} />
        <text x={cut - 6 * scale} y={y + 16 * scale} textAnchor="end">
          on the sheet
        </text>
        <text x={cut + 6 * scale} y={y + 16 * scale}>
          {beside.words}
        </text>
      </g>
    </>
  );
};
