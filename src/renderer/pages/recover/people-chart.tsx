import { Bar, BarChart, Cell, ReferenceLine, ResponsiveContainer, Tooltip, XAxis, YAxis } from 'recharts';
import type { PlannedJob } from '#shared/vocabulary/plan.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { dayWords } from '#shared/wording/moments.ts';
import { tickLook } from '../../components/chart-look.ts';
import { peopleByShift } from './job-rows.ts';

/** People wanted at once in each shift against those who are there. */
export const PeopleChart = ({ jobs, venue }: { jobs: readonly PlannedJob[]; venue: Venue }) => {
  const shifts = peopleByShift(jobs);
  const { dayCrew, nightCrew, overtimeCrew } = venue.workforce;
  if (shifts.length === 0) return null;
  return (
    <figure className="chart">
      <div aria-hidden>
        <ResponsiveContainer width="100%" height={120}>
          <BarChart data={[...shifts]} accessibilityLayer={false} margin={{ top: 6, right: 8, bottom: 0, left: -28 }}>
            <XAxis dataKey="name" tick={tickLook} interval="equidistantPreserveStart" minTickGap={12} stroke="currentColor" />
            <YAxis allowDecimals={false} tick={tickLook} stroke="currentColor" />
            <Tooltip isAnimationActive={false} cursor={{ fill: 'var(--chosen)' }} />
            <ReferenceLine y={dayCrew} stroke="var(--accent)" strokeDasharray="4 3" />
            <ReferenceLine y={nightCrew} stroke="var(--faint)" strokeDasharray="1 2" />
            <Bar dataKey="people" name="people at once" isAnimationActive={false}>
              {shifts.map((shift) => (
                <Cell key={`${shift.date}${shift.night}`} fill={shift.night ? 'var(--faint)' : 'var(--press)'} />
              ))}
            </Bar>
          </BarChart>
        </ResponsiveContainer>
      </div>
      <figcaption>
        The most people wanted at once, by day (dark) and night (grey). Dashed: the {dayCrew} of the day crew; dotted: the{' '}
        {nightCrew} of the night crew. What is above them is overtime, {overtimeCrew} at most.
      </figcaption>
      <details>
        <summary>The same as a table</summary>
        <table>
          <thead>
            <tr>
              <th scope="col">Shift</th>
              <th scope="col">People at once</th>
              <th scope="col">Crew</th>
            </tr>
          </thead>
          <tbody>
            {shifts
              .filter((shift) => shift.people > 0)
              .map((shift) => (
                <tr key={`${shift.date}${shift.night}`}>
                  <th scope="row">
                    {dayWords(shift.date)}, {shift.night ? 'night' : 'day'}
                  </th>
                  <td>{shift.people}</td>
                  <td>{shift.night ? nightCrew : dayCrew}</td>
                </tr>
              ))}
          </tbody>
        </table>
      </details>
    </figure>
  );
};
