import { Area, ComposedChart, Line, ReferenceLine, ResponsiveContainer, Tooltip, XAxis, YAxis } from 'recharts';
import type { Forecast, ZoneForecast } from '#shared/vocabulary/forecast.ts';
import { useDesk } from '../sheet/desk.ts';

/** Live cover of a zone by day with its range, and the same figures as a table. */
export const CoverChart = ({ forecast, zone }: { forecast: Forecast; zone: ZoneForecast }) => {
  const { venue } = useDesk();
  const needed = Math.round(100 * (venue?.rules.coverNeeded ?? 0));
  const rows = forecast.days.map((date, day) => ({
    date: date.slice(5),
    middle: Math.round(100 * zone.cover.p50[day]!),
    range: [Math.round(100 * zone.cover.p10[day]!), Math.round(100 * zone.cover.p90[day]!)] as [number, number],
  }));
  return (
    <figure className="chart">
      <div aria-hidden>
        <ResponsiveContainer width="100%" height={130}>
          <ComposedChart data={rows} accessibilityLayer={false} margin={{ top: 6, right: 6, bottom: 0, left: -26 }}>
            <XAxis dataKey="date" tick={{ fontSize: 10 }} interval="preserveStartEnd" stroke="currentColor" />
            <YAxis domain={[0, 100]} ticks={[0, 50, 100]} tick={{ fontSize: 10 }} stroke="currentColor" />
            <Tooltip isAnimationActive={false} />
            <Area dataKey="range" name="8 of 10" fill="var(--cover-range)" stroke="none" isAnimationActive={false} />
            <Line dataKey="middle" name="middle" stroke="var(--ink)" strokeWidth={1.6} dot={false} isAnimationActive={false} />
            <ReferenceLine y={needed} stroke="var(--accent)" strokeDasharray="4 3" />
          </ComposedChart>
        </ResponsiveContainer>
      </div>
      <figcaption>
        Live cover in per cent to the home date; the dashed line is what this venue asks, {needed} %. Watch whether the{' '}
        {forecast.members > 1 ? 'band' : 'line'} is above it on the last day.
      </figcaption>
      <details>
        <summary>The same as a table</summary>
        <table>
          <thead>
            <tr>
              <th scope="col">Day</th>
              <th scope="col">Middle</th>
              <th scope="col">8 of 10</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.date}>
                <th scope="row">{row.date}</th>
                <td>{row.middle} %</td>
                <td>
                  {row.range[0]}–{row.range[1]}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </figure>
  );
};
