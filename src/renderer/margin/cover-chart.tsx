import { Area, ComposedChart, Line, ReferenceLine, ResponsiveContainer, Tooltip, XAxis, YAxis } from 'recharts';
import { dateOf } from '#shared/calendar/local-time.ts';
import type { Forecast, ZoneForecast } from '#shared/vocabulary/forecast.ts';
import { dayWords } from '#shared/wording/moments.ts';
import { tickLook } from '../components/chart-look.ts';
import { useDesk } from '../desk/desk.ts';

const margin = { top: 6, right: 8, bottom: 0, left: -28 };
const whole = [0, 100];
const marks = [0, 50, 100];

/** Live cover of a zone by day with its range, and the same figures as a table. */
export const CoverChart = ({ forecast, zone }: { forecast: Forecast; zone: ZoneForecast }) => {
  const { venue } = useDesk();
  const needed = Math.round(100 * (venue?.rules.coverNeeded ?? 0));
  const ranged = forecast.members > 1;
  const percent = (value: number): number => Math.round(100 * value);
  const rows = forecast.days.map((date, day) => ({
    day: dayWords(date).slice(4),
    middle: percent(zone.cover.p50[day]!),
    range: [percent(zone.cover.p10[day]!), percent(zone.cover.p90[day]!)] as [number, number],
  }));
  const off = zone.lastOff && forecast.days.indexOf(dateOf(zone.lastOff));
  return (
    <figure className="chart">
      <div aria-hidden>
        <ResponsiveContainer width="100%" height={124}>
          <ComposedChart data={rows} accessibilityLayer={false} margin={margin}>
            <XAxis dataKey="day" tick={tickLook} interval="equidistantPreserveStart" minTickGap={24} stroke="currentColor" />
            <YAxis domain={whole} ticks={marks} tick={tickLook} stroke="currentColor" />
            <Tooltip isAnimationActive={false} />
            {ranged && <Area dataKey="range" name="P10–P90" fill="var(--cover-range)" stroke="none" isAnimationActive={false} />}
            <Line dataKey="middle" name="middle" stroke="var(--ink)" strokeWidth={1.6} dot={false} isAnimationActive={false} />
            <ReferenceLine y={needed} stroke="var(--accent)" strokeDasharray="4 3" />
            {typeof off === 'number' && off >= 0 && (
              <ReferenceLine x={rows[off]!.day} stroke="var(--faint)" strokeDasharray="1 2" />
            )}
          </ComposedChart>
        </ResponsiveContainer>
      </div>
      <figcaption>
        Live cover in per cent, day by day. Dashed: the {needed} % this venue asks; dotted: the last layer goes. Watch whether the{' '}
        {ranged ? 'whole band is' : 'line is'} above the dashed line on the last day.
      </figcaption>
      <details>
        <summary>The same as a table</summary>
        <table>
          <thead>
            <tr>
              <th scope="col">Day</th>
              <th scope="col">Middle</th>
              {ranged && <th scope="col">P10–P90</th>}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.day}>
                <th scope="row">{row.day}</th>
                <td>{row.middle} %</td>
                {ranged && (
                  <td>
                    {row.range[0]}–{row.range[1]}
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </figure>
  );
};
