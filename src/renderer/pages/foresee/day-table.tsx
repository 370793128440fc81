import { figure, show as inUnits } from '#shared/units/quantity.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import { dayWords } from '#shared/wording/moments.ts';
import { Figure } from '../../components/figure.tsx';
import { useDesk } from '../../desk/desk.ts';

/** The strip in figures: weather and growth day by day, and which zones are covered. */
export const DayTable = ({ forecast }: { forecast: Forecast }) => {
  const { units } = useDesk();
  const { weather, zones, days } = forecast;
  const mean = weather.growthPotential.reduce((sum, value) => sum + value, 0) / Math.max(1, days.length);
  return (
    <details>
      <summary>The strip in figures</summary>
      <p>
        Weather of the {forecast.members > 1 ? 'middle member' : 'usual season'}; growth potential on the mean{' '}
        <Figure kind="growth-potential" text={figure(mean, 2)} />.
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">High</th>
            <th scope="col">Low</th>
            <th scope="col">Rain</th>
            <th scope="col">Growth</th>
            <th scope="col">Covered</th>
          </tr>
        </thead>
        <tbody>
          {days.map((date, day) => (
            <tr key={date}>
              <th scope="row">{dayWords(date)}</th>
              <td>{inUnits(weather.maximum[day]!, 'temperature', units)}</td>
              <td>{inUnits(weather.minimum[day]!, 'temperature', units)}</td>
              <td>{weather.rain[day]! > 0 ? inUnits(weather.rain[day]!, 'rain', units) : '–'}</td>
              <td>{figure(weather.growthPotential[day]!, 2)}</td>
              <td>
                {zones
                  .filter(
                    (zone) =>
                      zone.firstOn && zone.lastOff && zone.firstOn.slice(0, 10) <= date && zone.lastOff.slice(0, 10) >= date,
                  )
                  .map((zone) => zone.letter)
                  .join(' ') || '–'}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
};
