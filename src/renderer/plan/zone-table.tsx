import { show as inUnits } from '#shared/units/quantity.ts';
import type { FigureKind } from '#shared/wording/explanations.ts';
import { causeWords, verdictWords } from '#shared/wording/words.ts';
import { eightOfTen, percent, rankedCauses } from '../components/numbers.ts';
import { drawnForecast, show, useDesk } from '../desk/desk.ts';

/** The plan in figures, for eyes and screen readers: one row a zone. A heading opens how its column is found, for the chosen zone. */
export const ZoneTable = () => {
  const desk = useDesk();
  const { run, draft, zone, units, previewing } = desk;
  const forecast = drawnForecast(desk);
  if (!forecast) return <p className="empty">The zones stand here in figures as soon as there is a booking and a home date.</p>;
  const ranged = forecast.members > 1;
  const chosen = forecast.zones.find((one) => one.letter === zone) ?? forecast.zones[0];
  const head = (text: string, kind: FigureKind, shown: string, className?: string) => (
    <th scope="col" className={className}>
      <button
        type="button"
        className="head"
        title="How is this column found?"
        onClick={() => chosen && show({ figure: { kind, zone: chosen.letter, shown } })}
      >
        {text}
      </button>
    </th>
  );
  return (
    <table className="zones" aria-busy={previewing}>
      <caption>
        {ranged && run && !draft
          ? `${forecast.members} members, kept run ${run.id.slice(0, 12)}`
          : 'The usual season, nothing kept'}
        : live cover by zone with nothing done until {forecast.homeDate.name}
      </caption>
      <thead>
        <tr>
          <th scope="col">Zone</th>
          {head('Turf', 'area', inUnits(chosen?.area ?? 0, 'area', units))}
          {head('Covered', 'hours-covered', `${chosen?.hoursCovered ?? 0} h`, 'in-margin')}
          {head('Now', 'cover-before', percent(chosen?.coverBefore.p50 ?? 0), 'in-margin')}
          {head('After', 'cover-after', percent(chosen?.coverAfter.p50 ?? 0))}
          {head('Home date', 'cover-home', percent(chosen?.coverHome.p50 ?? 0))}
          {ranged && head('P10–P90', 'cover-home', chosen ? `${eightOfTen(chosen.coverHome)} %` : '')}
          {ranged && head('Ready', 'chance-ready', percent(chosen?.chanceReady ?? 0))}
          <th scope="col">Main cause</th>
          {head('Left alone', 'verdict', chosen ? verdictWords[chosen.verdict] : '')}
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
                <button
                  type="button"
                  className="plain"
                  aria-pressed={one.letter === zone}
                  onClick={() => show({ zone: one.letter })}
                >
                  {one.letter} {one.name}
                </button>
              </th>
              <td>{inUnits(one.area, 'area', units)}</td>
              <td className="in-margin">{one.hoursCovered > 0 ? `${one.hoursCovered} h` : '–'}</td>
              <td className="in-margin">{percent(one.coverBefore.p50)}</td>
              <td>{percent(one.coverAfter.p50)}</td>
              <td>{percent(one.coverHome.p50)}</td>
              {ranged && <td>{eightOfTen(one.coverHome)}</td>}
              {ranged && <td>{percent(one.chanceReady)}</td>}
              <td className="words">{main ? `${causeWords[main.cause]} ${percent(main.share)}` : '–'}</td>
              <td className="words">{verdictWords[one.verdict]}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
};
