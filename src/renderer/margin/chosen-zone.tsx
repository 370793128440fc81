import { show as inUnits } from '#shared/units/quantity.ts';
import { causeWords, symptomWords, verdictWords } from '#shared/wording/words.ts';
import { percent, rankedCauses } from '../plan/zone-table.tsx';
import { useDesk } from '../sheet/desk.ts';
import { CoverChart } from './cover-chart.tsx';

/** The chosen zone in sentences a promoter understands and figures a groundsman trusts. */
export const ChosenZone = () => {
  const { preview, run, zone, units, coverings } = useDesk();
  const forecast = run?.result ?? preview;
  const one = forecast?.zones.find((candidate) => candidate.letter === zone);
  if (!forecast || !one) return <p className="empty">Choose a zone on the plan or in the table.</p>;
  const causes = rankedCauses(one.causes);
  const name = (id: string): string => coverings.find((covering) => covering.id === id)?.name ?? id;
  const days = Math.round((one.hoursDark / 24) * 10) / 10;
  return (
    <section aria-labelledby="chosen-zone">
      <h2 id="chosen-zone">
        {one.letter} {one.name}
      </h2>
      <p>
        {one.hoursCovered === 0
          ? `Nothing lies on its ${inUnits(one.area, 'area', units)} of turf.`
          : `${inUnits(one.area, 'area', units)} of turf under ${one.coverings.map(name).join(', ')} for ${one.hoursCovered} hours; ${days} days of no light. `}
        {one.crownTemperature &&
          `Crowns at ${inUnits(one.crownTemperature.mean, 'temperature', units)} on the mean, ${inUnits(one.crownTemperature.highest, 'temperature', units)} at the hottest. `}
        {one.footfalls > 0 && `${one.footfalls.toLocaleString('en')} steps on every square metre. `}
        {one.pressure > 0 && `Up to ${inUnits(one.pressure, 'pressure', units)} on the ground.`}
      </p>
      <p className="verdict">
        Left alone it {verdictWords[one.verdict]} on the home date
        {run ? `: ${percent(one.chanceReady)} chance of being ready` : ''}.
      </p>
      {causes.length > 0 && (
        <table className="bars">
          <caption>What takes the cover, as shares of the loss</caption>
          <tbody>
            {causes.map(({ cause, share }) => (
              <tr key={cause}>
                <th scope="row">{causeWords[cause]}</th>
                <td>
                  <i style={{ width: `${Math.round(100 * share)}%` }} aria-hidden />
                  <span>{percent(share)}</span>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <CoverChart forecast={forecast} zone={one} />
      {one.seen.length > 0 && (
        <details>
          <summary>What an inspector would see</summary>
          <ul>
            {[...new Set(one.seen.map((look) => look.date))].map((date) => (
              <li key={date}>
                {date.slice(5)}:{' '}
                {one.seen
                  .filter((look) => look.date === date)
                  .map((look) => `${symptomWords[look.symptom]} ${percent(look.severity)}`)
                  .join(', ')}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
};
