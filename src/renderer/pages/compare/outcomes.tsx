import type { ReactNode } from 'react';
import { figure, minorDigits, show as inUnits, showMoney } from '#shared/units/quantity.ts';
import type { Booking } from '#shared/vocabulary/booking.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { momentWords } from '../../desk/moments.ts';
import { verdictMarks } from '#shared/wording/words.ts';
import { Figure } from '../../components/figure.tsx';
import { percent } from '../../components/numbers.ts';
import { floorZones } from '../../desk/booking-shapes.ts';
import { useDesk, type Trial } from '../../desk/desk.ts';
import { edit } from '../../desk/editing.ts';
import { boundsOf, pathOf } from '../../drawings/frame.ts';
import { cellPaths } from '../../drawings/turf-cells.ts';

/** Lifting a floor against laying it: 6–10 h against 8–14 h for the same floor, recalled. */
const liftShare = 0.7;

/** One way in figures. Money in the smallest unit; null where a price is missing. */
interface Line {
  readonly trial: Trial;
  readonly floorArea: number;
  readonly hire: number | null;
  readonly layHours: number | null;
  readonly trucks: number | null;
  readonly together: number | null;
  readonly unpriced: readonly string[];
  readonly ready: boolean;
}

const lineOf = (trial: Trial, venue: Venue): Line => {
  const { floor, outcome, way } = trial;
  const letters = floorZones(way.booking);
  const zones = outcome.forecast?.zones.filter((zone) => letters.has(zone.letter)) ?? [];
  const floorArea = zones.reduce((sum, zone) => sum + zone.area, 0);
  const hire =
    floor === null
      ? 0
      : floor.hirePrice === null
        ? null
        : Math.round(floor.hirePrice * floorArea * 10 ** minorDigits(venue.rules.currency));
  const total = outcome.recovery?.total ?? null;
  return {
    trial,
    floorArea,
    hire,
    layHours: floor && (floorArea / floor.layingRate) * (1 + liftShare),
    trucks: floor && Math.ceil(floorArea / floor.perTruck),
    together: total === null ? null : total + (hire ?? 0),
    unpriced: [...(hire === null ? ['floor hire'] : []), ...(outcome.recovery?.unpriced ?? [])],
    ready: outcome.recovery !== null && outcome.recovery.leastChance >= venue.rules.chanceNeeded - 1e-9,
  };
};

/** The cheapest way after which every zone is ready with the chance the venue asks for. */
const cheapest = (lines: readonly Line[]): Line | null =>
  lines
    .filter((line) => line.ready && line.together !== null)
    .toSorted((a, b) => a.together! - b.together! || (a.layHours ?? 0) - (b.layHours ?? 0))[0] ?? null;

/** The ways as a table and as small maps; one of them can be taken as the booking. */
export const Outcomes = ({ booking, venue, trials }: { booking: Booking; venue: Venue; trials: readonly Trial[] }) => {
  const { units } = useDesk();
  const { currency, chanceNeeded } = venue.rules;
  const lines = trials.map((trial) => lineOf(trial, venue));
  const best = cheapest(lines);
  const money = (value: number | null): string => (value === null ? 'no price' : showMoney(value, currency));
  const take = ({ way }: Trial): void => edit({ ...way.booking, id: booking.id, revision: booking.revision });
  return (
    <>
      <p role="status" className="best">
        {best ? (
          <>
            Cheapest with every zone ready at {percent(chanceNeeded)} or more: <strong>{best.trial.way.name}</strong>,{' '}
            {showMoney(best.together!, currency)}
            {best.unpriced.length > 0 && ` without ${best.unpriced.join(', ')}`}.{' '}
            <button type="button" className="main" onClick={() => take(best.trial)}>
              Take the cheapest that is ready
            </button>
          </>
        ) : (
          `None of these ways is ready with the ${percent(chanceNeeded)} this venue asks.`
        )}
      </p>
      <p className="caution">
        Lay hours and trucks from the class of floor, lifting at seven tenths of laying (recalled); hire where a quotation is
        entered. Turf not ready is with nothing done; the chance is that of the least likely zone after the recovery.
      </p>
      <div className="scroll">
        <table className="trials">
          <caption>Ways side by side, after the recovery planned for each</caption>
          <thead>
            <tr>
              <th scope="col">Way</th>
              <th scope="col">Turf not ready, P10–P90</th>
              <th scope="col">Chance ready</th>
              <th scope="col">Sod, release by</th>
              <th scope="col">Together: recovery, hire</th>
              <th scope="col">Floor trucks, lay and lift</th>
              <th scope="col">Promoter gives up</th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line) => {
              const { trial } = line;
              const { forecast, recovery, reason } = trial.outcome;
              return (
                <tr key={trial.way.name} className={line === best ? 'chosen' : ''}>
                  <th scope="row">
                    {trial.way.name}
                    <br />
                    <button
                      type="button"
                      disabled={forecast === null}
                      onClick={() => take(trial)}
                      aria-label={`Take ${trial.way.name}`}
                    >
                      take
                    </button>
                  </th>
                  <td className={forecast ? '' : 'words'}>
                    {forecast ? (
                      <TwoLines
                        first={<Figure kind="replace-area" text={inUnits(forecast.replaceArea.p50, 'area', units)} />}
                        second={`${figureOf(forecast.replaceArea.p10, units)}–${figureOf(forecast.replaceArea.p90, units)}`}
                      />
                    ) : (
                      reason
                    )}
                  </td>
                  {recovery ? (
                    <>
                      <td>{percent(recovery.leastChance)}</td>
                      <td>
                        <TwoLines
                          first={recovery.ordered > 0 ? inUnits(recovery.ordered, 'area', units) : 'none'}
                          second={recovery.releaseBy ? momentWords(recovery.releaseBy) : ''}
                        />
                      </td>
                      <td>
                        <TwoLines
                          first={
                            <strong>
                              {line.together === null ? 'no price' : <Figure kind="cost" text={money(line.together)} />}
                            </strong>
                          }
                          second={[recovery.total, ...(trial.floor ? [line.hire] : [])].map(money).join(' + ')}
                        />
                      </td>
                    </>
                  ) : (
                    <td colSpan={3} className="words">
                      {forecast ? reason : '–'}
                    </td>
                  )}
                  <td>
                    {line.trucks === null || line.layHours === null ? (
                      '–'
                    ) : (
                      <TwoLines first={`${line.trucks} trucks`} second={`${figure(line.layHours, 0)} people-h`} />
                    )}
                  </td>
                  <td className="words">{trial.givesUp.join('; ') || 'nothing'}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      <ul className="small-maps">
        {lines.map(({ trial }) =>
          trial.outcome.forecast ? (
            <li key={trial.way.name}>
              <SmallMap venue={venue} booking={trial.way.booking} forecast={trial.outcome.forecast} name={trial.way.name} />
              <p>
                <strong>{trial.way.name}</strong>
                <br />
                {trial.outcome.forecast.zones
                  .filter((zone) => zone.verdict !== 'play')
                  .map((zone) => `${zone.letter} ${verdictMarks[zone.verdict]}`)
                  .join(', ') || 'all zones play'}
              </p>
            </li>
          ) : null,
        )}
      </ul>
    </>
  );
};

/** What counts most, and beneath it what it is made of or ranges over. */
const TwoLines = ({ first, second }: { first: ReactNode; second: string }) => (
  <>
    {first}
    <br />
    <span className="was">{second}</span>
  </>
);

const figureOf = (area: number, units: 'us' | 'si'): string => inUnits(area, 'area', units).replace(/ .*$/, '');

/** The field small, with cover on the home date and the outlines of the event. */
const SmallMap = ({ venue, booking, forecast, name }: { venue: Venue; booking: Booking; forecast: Forecast; name: string }) => {
  const bounds = boundsOf([venue.field.outline, ...booking.zones.map((zone) => zone.outline)]);
  return (
    <svg
      className="small-map"
      viewBox={`${bounds.x - 1} ${-(bounds.y + bounds.height) - 1} ${bounds.width + 2} ${bounds.height + 2}`}
      role="img"
      aria-label={`The field on the home date: ${name}; the table holds the figures.`}
    >
      {cellPaths(forecast, 'home', 0).map(({ colour, path }) => (
        <path key={colour} d={path} fill={colour} />
      ))}
      {booking.zones.map((zone) => (
        <path key={zone.letter} d={pathOf([zone.outline])} className="event-zone" fill="none" />
      ))}
      <path d={pathOf([venue.field.outline])} className="edge" />
    </svg>
  );
};
