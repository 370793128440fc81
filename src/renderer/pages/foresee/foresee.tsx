import { show as inUnits } from '#shared/units/quantity.ts';
import { momentWords } from '../../desk/moments.ts';
import { cautions, warningWords } from '#shared/wording/words.ts';
import { Figure } from '../../components/figure.tsx';
import { percent } from '../../components/numbers.ts';
import { homeDates } from '../../desk/booking-shapes.ts';
import { drawnForecast, show, useDesk } from '../../desk/desk.ts';
import { foresee } from '../../desk/foreseeing.ts';
import { chooseHome } from '../../desk/previewing.ts';
import { ZoneTable } from '../../plan/zone-table.tsx';
import { WhatIf } from './what-if.tsx';
import { DayTable } from './day-table.tsx';
import { warningText } from '#shared/wording/warnings.ts';

/** What the field is on the home date, with ranges, causes and chance; what was taken for granted, and what to mind. */
export const Foresee = () => {
  const desk = useDesk();
  const { run, draft, fixtures, homeId, units, job, booking } = desk;
  const forecast = drawnForecast(desk);
  const homes = homeDates(fixtures);
  const ranged = run !== null && draft === null && run.result.members > 1;
  const area = (value: number): string => inUnits(value, 'area', units);
  return (
    <section aria-labelledby="foresee">
      <h2 id="foresee">Foresee</h2>
      <div className="row">
        <label>
          Home date{' '}
          <select value={homeId ?? ''} onChange={(event) => chooseHome(event.target.value)}>
            {homes.length === 0 && <option value="">none yet</option>}
            {homes.map((home) => (
              <option key={home.id} value={home.id}>
                {home.name}, {momentWords(home.start)}
              </option>
            ))}
          </select>
        </label>
        <button type="button" className="main" disabled={job !== null || !booking} onClick={() => void foresee(100)}>
          Draw 100 members
        </button>
        <button type="button" disabled={job !== null || !booking} onClick={() => void foresee(500)}>
          Draw 500
        </button>
      </div>
      {booking && booking.note !== '' && <p className="booking-note">{booking.note}</p>}
      {homes.length === 0 && (
        <p className="empty">
          A forecast needs a home date.{' '}
          <button type="button" onClick={() => show({ verb: 'book' })}>
            Enter one under book
          </button>
        </p>
      )}
      {forecast && (
        <p className="summary">
          {ranged ? (
            <>
              With nothing done, every zone is ready with a chance of{' '}
              <Figure kind="chance-all" text={percent(forecast.chanceAllReady)} />. Not ready by itself:{' '}
              <Figure kind="replace-area" text={area(forecast.replaceArea.p50)} /> ({area(forecast.replaceArea.p10)} to{' '}
              {area(forecast.replaceArea.p90)}).
            </>
          ) : (
            <>
              In the usual season <Figure kind="replace-area" text={area(forecast.replaceArea.p50)} /> are not ready by themselves
              on {momentWords(forecast.homeDate.start)}. Draw members to see ranges and chances.
            </>
          )}
        </p>
      )}
      <div className="scroll">
        <ZoneTable />
      </div>
      <WhatIf />
      <p className="caution">{cautions.surface}</p>
      {forecast && forecast.warnings.length > 0 && (
        <details open>
          <summary>To mind ({forecast.warnings.length})</summary>
          <ul>
            {forecast.warnings.map((warning, index) => (
              <li key={index}>
                <strong>
                  {warning.zone}: {warningWords[warning.kind]}.
                </strong>{' '}
                {warningText(warning, units)}.
              </li>
            ))}
          </ul>
          <p className="caution">{cautions.structures}</p>
        </details>
      )}
      {forecast && (
        <details>
          <summary>Taken for granted ({forecast.assumptions.length})</summary>
          <ul>
            {forecast.assumptions.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </details>
      )}
      {forecast && <DayTable forecast={forecast} />}
    </section>
  );
};
