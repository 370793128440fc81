import { show as inUnits } from '#shared/units/quantity.ts';
import type { FigureKind } from '#shared/wording/explanations.ts';
import { spanWords } from '#shared/wording/moments.ts';
import { verdictWords } from '#shared/wording/words.ts';
import { Figure } from '../components/figure.tsx';
import { eightOfTen, percent } from '../components/numbers.ts';
import { drawnForecast, useDesk } from '../desk/desk.ts';

/** The chosen zone in sentences a promoter understands and figures a groundsman trusts. */
export const ChosenZone = () => {
  const desk = useDesk();
  const { run, draft, zone, units, coverings } = desk;
  const forecast = drawnForecast(desk);
  const one = forecast?.zones.find((candidate) => candidate.letter === zone);
  if (!forecast || !one)
    return <p className="empty">Choose a zone on the plan, on the strip or in the table: it is told here.</p>;
  const ranged = run !== null && draft === null && forecast.members > 1;
  const name = (id: string): string => (coverings.find((covering) => covering.id === id)?.name ?? id).toLowerCase();
  const fig = (kind: FigureKind, text: string) => <Figure kind={kind} zone={one.letter} text={text} />;
  const byItself = one.daysToReady.p50;
  return (
    <section className="chosen-zone" aria-labelledby="chosen-zone">
      <h2 id="chosen-zone">
        {one.letter} {one.name}
      </h2>
      {one.hoursCovered === 0 ? (
        <p>Nothing lies on its {fig('area', inUnits(one.area, 'area', units))} of turf.</p>
      ) : (
        <p>
          {fig('area', inUnits(one.area, 'area', units))} of turf under {one.coverings.map(name).join(', ')} for{' '}
          {fig('hours-covered', spanWords(one.hoursCovered))}
          {one.hoursDark > 0 && <>, {fig('hours-dark', spanWords(one.hoursDark))} of that without any light</>}.{' '}
          {one.crownTemperature && (
            <>
              The crowns are at {fig('crown-temperature', inUnits(one.crownTemperature.mean, 'temperature', units))} on the mean,{' '}
              {inUnits(one.crownTemperature.highest, 'temperature', units)} in the hottest hour.{' '}
            </>
          )}
          {one.footfalls > 0 && (
            <>{fig('footfalls', inUnits(one.footfalls, 'onGround', units).replace(' ', ' steps '))} of turf. </>
          )}
          {one.pressure > 0 && <>Up to {fig('pressure', inUnits(one.pressure, 'pressure', units))} on the ground.</>}
        </p>
      )}
      <table className="three">
        <caption>Live cover with nothing done{ranged ? ', middle and P10–P90' : ', usual season'}</caption>
        <thead>
          <tr>
            <th scope="col">Before</th>
            <th scope="col">Last layer off</th>
            <th scope="col">Home date</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <td>{fig('cover-before', percent(one.coverBefore.p50))}</td>
            <td>{fig('cover-after', percent(one.coverAfter.p50))}</td>
            <td>{fig('cover-home', percent(one.coverHome.p50))}</td>
          </tr>
          {ranged && (
            <tr>
              <td>{eightOfTen(one.coverBefore)}</td>
              <td>{eightOfTen(one.coverAfter)}</td>
              <td>{eightOfTen(one.coverHome)}</td>
            </tr>
          )}
        </tbody>
      </table>
      <p className="verdict">
        Left alone it {fig('verdict', verdictWords[one.verdict])} on the home date
        {ranged && <>: {fig('chance-ready', percent(one.chanceReady))} chance of being ready</>}.{' '}
        {one.hoursCovered > 0 &&
          (byItself === null ? (
            'Not ready by itself within the days shown.'
          ) : (
            <>
              Ready by itself {fig('days-to-ready', byItself === 0 ? 'at once' : `${byItself} days after`)}
              {byItself > 0 && ' the last layer'}.
            </>
          ))}
      </p>
    </section>
  );
};
