import { dayWords } from '#shared/wording/moments.ts';
import { causeWords, symptomWords } from '#shared/wording/words.ts';
import { percent, rankedCauses } from '../components/numbers.ts';
import { drawnForecast, show, useDesk } from '../desk/desk.ts';
import { CoverChart } from './cover-chart.tsx';

/** Why the chosen zone loses cover, how it goes day by day, and what an inspector would see. */
export const ZoneCauses = () => {
  const desk = useDesk();
  const forecast = drawnForecast(desk);
  const one = forecast?.zones.find((candidate) => candidate.letter === desk.zone);
  if (!forecast || !one) return null;
  const causes = rankedCauses(one.causes);
  return (
    <section aria-label={`Why ${one.name} loses cover`}>
      {causes.length > 0 && (
        <table className="bars">
          <caption>What takes the cover, as shares of the loss</caption>
          <tbody>
            {causes.map(({ cause, share }) => (
              <tr key={cause}>
                <th scope="row">
                  <button
                    type="button"
                    className="figure"
                    onClick={() => show({ figure: { kind: `cause-${cause}`, zone: one.letter, shown: percent(share) } })}
                  >
                    {causeWords[cause]}
                  </button>
                </th>
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
                {dayWords(date)}:{' '}
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
