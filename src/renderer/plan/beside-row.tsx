import { useState } from 'react';
import { show as inUnits } from '#shared/units/quantity.ts';
import { drawnForecast, useDesk } from '../desk/desk.ts';
import { layBeside, otherWays } from './beside.ts';
import { draw, takeTool, useDrafting } from './drafting.ts';

/** Two ways of the same event over the same ground: chosen here, moved over one another with a slider, or in halves. */
export const BesideRow = () => {
  const desk = useDesk();
  const { beside } = useDrafting();
  const [name, setName] = useState('');
  const ways = otherWays(desk);
  const forecast = drawnForecast(desk);
  if (ways.length === 0 && !beside) return null;
  const choose = (chosen: string): void => {
    setName(chosen);
    const way = ways.find((one) => one.name === chosen);
    if (way) void layBeside(way);
    else draw({ beside: null });
  };
  return (
    <div className="beside-row">
      <label>
        Lay beside{' '}
        <select value={beside ? name : ''} onChange={(event) => choose(event.target.value)}>
          <option value="">nothing</option>
          {beside && !ways.some((way) => way.name === name) && <option value={name}>{beside.words}</option>}
          {ways.map((way) => (
            <option key={way.name} value={way.name}>
              {way.words}
            </option>
          ))}
        </select>
      </label>
      {beside && forecast && (
        <>
          <button
            type="button"
            aria-pressed={beside.way === 'halves'}
            onClick={() => {
              takeTool('look');
              draw({ beside: { ...beside, way: beside.way === 'halves' ? 'slider' : 'halves' } });
            }}
          >
            in halves
          </button>
          {beside.way === 'slider' && (
            <input
              type="range"
              aria-label={`Share of the plan that shows the sheet; the rest shows ${beside.words}`}
              min={0}
              max={100}
              value={Math.round(beside.share * 100)}
              onChange={(event) => draw({ beside: { ...beside, share: event.target.valueAsNumber / 100 } })}
            />
          )}
          <span>
            Not ready by itself: {inUnits(forecast.replaceArea.p50, 'area', desk.units)} on the sheet,{' '}
            {inUnits(beside.forecast.replaceArea.p50, 'area', desk.units)} {beside.words}.
          </span>
        </>
      )}
    </div>
  );
};
