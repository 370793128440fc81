import { show as inUnits } from '#shared/units/quantity.ts';
import { warningWords } from '#shared/wording/words.ts';
import { ChosenZone } from '../margin/chosen-zone.tsx';
import { percent } from '../plan/zone-table.tsx';
import { chooseHome, edit, foresee, stretched, useDesk } from '../sheet/desk.ts';

export const Foresee = () => {
  const { run, preview, fixtures, homeId, units, job, booking } = useDesk();
  const forecast = run?.result ?? preview;
  const homes = fixtures.filter((fixture) => fixture.kind === 'home-date').toSorted((a, b) => (a.start < b.start ? -1 : 1));
  return (
    <section aria-labelledby="foresee">
      <h2 id="foresee">Foresee</h2>
      <label>
        Home date{' '}
        <select value={homeId ?? ''} onChange={(event) => chooseHome(event.target.value)}>
          {homes.map((home) => (
            <option key={home.id} value={home.id}>
              {home.name}, {home.start.replace('T', ' ')}
            </option>
          ))}
        </select>
      </label>
      <div className="row">
        <button type="button" className="main" disabled={job !== null} onClick={() => void foresee(200)}>
          Draw 200 members
        </button>
        <button type="button" disabled={job !== null} onClick={() => void foresee(500)}>
          500
        </button>
        {booking && (
          <button
            type="button"
            onClick={() => edit(stretched(booking, 1))}
            title="Shows what one more day does; undo takes it back"
          >
            one more day
          </button>
        )}
      </div>
      {forecast && (
        <p>
          {run
            ? `Chance that every zone is ready with nothing done: ${percent(forecast.chanceAllReady)}. To be mended or replaced: ${inUnits(forecast.replaceArea.p50, 'area', units)} (${inUnits(forecast.replaceArea.p10, 'area', units)} to ${inUnits(forecast.replaceArea.p90, 'area', units)}).`
            : `The usual season: ${inUnits(forecast.replaceArea.p50, 'area', units)} not ready by itself. Draw members for ranges and chances.`}
        </p>
      )}
      <ChosenZone />
      {forecast && forecast.warnings.length > 0 && (
        <details open>
          <summary>To mind ({forecast.warnings.length})</summary>
          <ul>
            {forecast.warnings.map((warning, index) => (
              <li key={index}>
                <strong>
                  {warning.zone}: {warningWords[warning.kind]}.
                </strong>{' '}
                {warning.detail}.
              </li>
            ))}
          </ul>
          <p className="caution">Loads, stages and cranes belong to the responsible engineer.</p>
        </details>
      )}
      {forecast && (
        <details>
          <summary>Taken for granted</summary>
          <ul>
            {forecast.assumptions.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
};
