import { show as inUnits } from '#shared/units/quantity.ts';
import type { Cause, ZoneForecast } from '#shared/vocabulary/forecast.ts';
import { causeWords, verdictWords } from '#shared/wording/words.ts';
import { show, useDesk } from '../sheet/desk.ts';

export const percent = (share: number): string => `${Math.round(100 * share)}\u00a0%`;

/** The causes of a zone's loss, largest first, as shares of the loss. */
export const rankedCauses = (causes: ZoneForecast['causes']): readonly { cause: Cause; share: number }[] => {
  const all = Object.entries(causes) as [Cause, number][];
  const total = all.reduce((sum, [, loss]) => sum + loss, 0);
  if (total < 0.01) return [];
  return all
    .map(([cause, loss]) => ({ cause, share: loss / total }))
    .filter(({ share }) => share >= 0.01)
    .toSorted((a, b) => b.share - a.share);
};

/** The plan in figures, for eyes and screen readers: one row a zone. */
export const ZoneTable = () => {
  const { preview, run, zone, units, previewing } = useDesk();
  const forecast = run?.result ?? preview;
  if (!forecast) return <p className="empty">The zones stand here as soon as the season is reckoned.</p>;
  return (
    <table className="zones" aria-busy={previewing}>
      <caption>
        {run ? `${forecast.members} members, kept run ${run.id.slice(0, 12)}` : 'The usual season, nothing kept'}: live cover by
        zone with nothing done until {forecast.homeDate.name}
      </caption>
      <thead>
        <tr>
          <th scope="col">Zone</th>
          <th scope="col">Turf</th>
          <th scope="col">Covered</th>
          <th scope="col">Now</th>
          <th scope="col">After</th>
          <th scope="col">Home date</th>
          {run && <th scope="col">8 of 10</th>}
          {run && <th scope="col">Ready</th>}
          <th scope="col">Main cause</th>
          <th scope="col">Left alone</th>
        </tr>
      </thead>
      <tbody>
        {forecast.zones.map((one) => {
          const main = rankedCauses(one.causes)[0];
          return (
            <tr
              key={one.letter}
              className={`${one.verdict}${one.letter === zone ? ' chosen' : ''}`}
              onClick={() => show({ zone: one.letter })}
            >
              <th scope="row">
                <button type="button" onClick={() => show({ zone: one.letter })}>
                  {one.letter} {one.name}
                </button>
              </th>
              <td>{inUnits(one.area, 'area', units)}</td>
              <td>{one.hoursCovered > 0 ? `${one.hoursCovered} h` : '–'}</td>
              <td>{percent(one.coverBefore.p50)}</td>
              <td>{percent(one.coverAfter.p50)}</td>
              <td>{percent(one.coverHome.p50)}</td>
              {run && (
                <td>
                  {Math.round(100 * one.coverHome.p10)}–{Math.round(100 * one.coverHome.p90)}
                </td>
              )}
              {run && <td>{percent(one.chanceReady)}</td>}
              <td>{main ? `${causeWords[main.cause]} ${percent(main.share)}` : '–'}</td>
              <td>{verdictWords[one.verdict]}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
};
