import { figure, unitOf, type UnitSystem } from '#shared/units/quantity.ts';
import { barLength, type View } from '../drawings/frame.ts';

/** Scale bar and north arrow: they stand on the sheet, not on the ground, and keep their size. */
export const SheetMarks = ({
  view,
  box,
  bearing,
  units,
}: {
  view: View;
  box: { width: number; height: number };
  bearing: number;
  units: UnitSystem;
}) => {
  const { scale } = view;
  const left = view.x - (box.width * scale) / 2;
  const bottom = -view.y + (box.height * scale) / 2;
  const right = view.x + (box.width * scale) / 2;
  const bar = barLength(box.width * scale * 0.28, units === 'us' ? 0.3048 : 1);
  return (
    <>
      <g className="sheet-mark" transform={`translate(${left + 10 * scale} ${bottom - 10 * scale}) scale(${scale})`}>
        <rect x={-5} y={-17} width={bar.metres / scale + 52} height={23} className="paper" />
        <path d={`M0 -5V0H${bar.metres / scale}V-5M${bar.metres / scale / 2} -3V0`} />
        <text x={bar.metres / scale + 5} y={1} fontSize={11}>
          {figure(bar.units, 0)} {unitOf('length', units)}
        </text>
      </g>
      <g className="sheet-mark" transform={`translate(${right - 22 * scale} ${bottom - 26 * scale}) scale(${scale})`}>
        <circle r={19} className="paper" />
        <g transform={`rotate(${-bearing})`}>
          <path d="M0 12V-11M-4 -3L0 -12L4 -3" />
          <text y={-13} fontSize={10} textAnchor="middle">
            N
          </text>
        </g>
      </g>
    </>
  );
};
