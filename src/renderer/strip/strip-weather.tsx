import { memo } from 'react';
import { atClock } from '#shared/calendar/local-time.ts';
import { figure, toShown, type UnitSystem } from '#shared/units/quantity.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import type { StripScale } from './strip-scale.ts';

export const weatherHeights = { temperature: 26, rain: 13, growth: 13 } as const;

/** px of a day from which its two temperatures can be written. */
const roomForFigures = 30;
/** mm of rain that fill the row. */
const fullRain = 25;

/** Temperature as a band from night to day, rain and growth potential as bars, of the season that is drawn. */
export const WeatherRows = memo(
  ({ forecast, scale, top, units }: { forecast: Forecast; scale: StripScale; top: number; units: UnitSystem }) => {
    const { maximum, minimum, rain, growthPotential } = forecast.weather;
    const shown = forecast.days.map((date, day) => ({ date, day })).filter(({ date }) => scale.holds(date));
    if (shown.length === 0) return null;
    const temperatures = shown.flatMap(({ day }) => [maximum[day]!, minimum[day]!]);
    const [low, high] = [Math.min(...temperatures) - 1, Math.max(...temperatures) + 1];
    const y = (value: number): number => top + 2 + (1 - (value - low) / (high - low)) * (weatherHeights.temperature - 4);
    const rainBottom = top + weatherHeights.temperature + weatherHeights.rain;
    const growthBottom = rainBottom + weatherHeights.growth;
    const middle = (date: string): number => scale.x(atClock(date, '12:00'));
    const band = [
      ...shown.map(({ date, day }) => `${middle(date).toFixed(1)} ${y(maximum[day]!).toFixed(1)}`),
      ...shown.toReversed().map(({ date, day }) => `${middle(date).toFixed(1)} ${y(minimum[day]!).toFixed(1)}`),
    ];
    const inUnits = (value: number): string => figure(toShown(value, 'temperature', units), 0);
    return (
      <g>
        <path d={`M${band.join('L')}Z`} className="temperature" />
        {shown.map(({ date, day }) => (
          <g key={date}>
            <title>{`${date}: ${inUnits(maximum[day]!)}/${inUnits(minimum[day]!)}, growth potential ${figure(growthPotential[day]!, 2)}`}</title>
            {scale.dayWidth >= roomForFigures && (
              <text x={middle(date)} y={top + 17} textAnchor="middle" className="weather">
                {inUnits(maximum[day]!)}/{inUnits(minimum[day]!)}
              </text>
            )}
            {rain[day]! > 0.2 && (
              <rect
                x={middle(date) - scale.dayWidth * 0.2}
                y={rainBottom - Math.max(1.5, Math.min(1, rain[day]! / fullRain) * (weatherHeights.rain - 2))}
                width={scale.dayWidth * 0.4}
                height={Math.max(1.5, Math.min(1, rain[day]! / fullRain) * (weatherHeights.rain - 2))}
                className="rain"
              />
            )}
            <rect
              x={middle(date) - scale.dayWidth * 0.3}
              y={growthBottom - growthPotential[day]! * (weatherHeights.growth - 2)}
              width={scale.dayWidth * 0.6}
              height={growthPotential[day]! * (weatherHeights.growth - 2)}
              className="growth"
            />
          </g>
        ))}
      </g>
    );
  },
);
