import { figure, showMoney } from '#shared/units/quantity.ts';
import { programmeKinds, type ProgrammeKind } from '#shared/vocabulary/plan.ts';
import { spanWords } from '#shared/wording/moments.ts';
import { momentWords } from '../../desk/moments.ts';
import { cautions, programmeWords } from '#shared/wording/words.ts';
import { Choice, Part } from '../../components/fields.tsx';
import { Figure } from '../../components/figure.tsx';
import { percent } from '../../components/numbers.ts';
import { show, useDesk } from '../../desk/desk.ts';
import { lock, makePlan } from '../../desk/recovering.ts';
import { Cost } from './cost.tsx';
import { JobChart } from './job-chart.tsx';
import { Quantities } from './quantities.tsx';
import { SodOrders } from './sod-orders.tsx';
import './recover.css';

/** The recovery: ways back, jobs, the sod order with every term of its release, decisions, cost. */
export const Recover = () => {
  const { plan, venue, job, run, booking, locks, done, zone: chosen } = useDesk();
  if (!venue || !booking)
    return (
      <section aria-labelledby="recover">
        <h2 id="recover">Recover</h2>
        <p className="empty">Open or begin a booking first: the way back after it is planned here.</p>
      </section>
    );
  const held = (zone: string, window: string): ProgrammeKind | '' =>
    locks.find((one) => one.zone === zone && one.window === window)?.programme ?? '';
  const choices = [['', 'as planned'] as const, ...programmeKinds.map((kind) => [kind, programmeWords[kind]] as const)];
  return (
    <section aria-labelledby="recover">
      <h2 id="recover">Recover</h2>
      <div className="row">
        <button type="button" className="main" disabled={job !== null} onClick={() => void makePlan()}>
          {plan ? 'Plan again' : run ? 'Plan the recovery' : 'Foresee and plan'}
        </button>
        {(locks.length > 0 || done.length > 0) && (
          <span>
            with {locks.length} held {locks.length === 1 ? 'zone' : 'zones'} and {done.length}{' '}
            {done.length === 1 ? 'job' : 'jobs'} at known hours
          </span>
        )}
        {plan && (
          <button type="button" onClick={() => show({ verb: 'report' })}>
            Write the papers
          </button>
        )}
      </div>
      {!plan && (
        <p className="empty">
          The plan says which zones are left, mended or resodded, when the crew does what, and by when the sod is released. It
          obeys crew, machines, curfew, practice, the farm’s notice and trucks; where it is not possible it says why, and which
          smallest change would help.
        </p>
      )}
      {plan && (
        <>
          <div className="scroll">
            <table className="ways">
              <caption>Ways back. Hold a zone to another way and plan again.</caption>
              <thead>
                <tr>
                  <th scope="col">Zone</th>
                  <th scope="col">Way back</th>
                  <th scope="col">Ends</th>
                  <th scope="col">In hand</th>
                  <th scope="col">Ready</th>
                  <th scope="col">Hold to</th>
                </tr>
              </thead>
              <tbody>
                {plan.plan.zones.map((zone) => (
                  <tr
                    key={`${zone.zone}-${zone.window}`}
                    className={zone.zone === chosen ? 'chosen' : ''}
                    onClick={() => show({ zone: zone.zone })}
                  >
                    <th scope="row">
                      {zone.zone} {booking.zones.find((one) => one.letter === zone.zone)?.name}
                    </th>
                    <td
                      title={
                        zone.farm ? `Sod of ${venue.farms.find((farm) => farm.id === zone.farm)?.name ?? zone.farm}` : undefined
                      }
                    >
                      {programmeWords[zone.programme]}
                    </td>
                    <td>{zone.finish ? momentWords(zone.finish) : '–'}</td>
                    <td>{zone.finish ? <Figure kind="slack" zone={zone.zone} text={spanWords(zone.slack)} /> : '–'}</td>
                    <td>
                      {percent(zone.chanceReady)}
                      {zone.chanceInRain !== undefined && <span className="was"> in rain {percent(zone.chanceInRain)}</span>}
                    </td>
                    <td>
                      <Choice
                        label={`Hold ${zone.zone} to`}
                        value={held(zone.zone, zone.window)}
                        words={choices}
                        change={(kind) => lock(zone.zone, zone.window, kind === '' ? null : kind)}
                      />
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          <JobChart plan={plan} />
          <SodOrders plan={plan} />
          <Quantities plan={plan} />
          <Part title="Last hours to decide">
            <table>
              <thead>
                <tr>
                  <th scope="col">Decision</th>
                  <th scope="col">At the latest</th>
                  <th scope="col">From now</th>
                </tr>
              </thead>
              <tbody>
                {plan.plan.decisions
                  .toSorted((a, b) => (a.at < b.at ? -1 : 1))
                  .map((decision) => (
                    <tr key={`${decision.name}-${decision.at}`}>
                      <th scope="row">{decision.name}</th>
                      <td>{momentWords(decision.at)}</td>
                      <td>{decision.slack >= 0 ? spanWords(decision.slack) : `${spanWords(-decision.slack)} ago`}</td>
                    </tr>
                  ))}
              </tbody>
            </table>
            <p className="caution">Now is {momentWords(plan.now)} at the venue, when this plan was made.</p>
          </Part>
          <Cost plan={plan} />
          <p>
            <Figure kind="cost" text={showMoney(plan.plan.cost.total, venue.rules.currency)} />;{' '}
            {plan.plan.aim === 'least-cost' ? 'the least cost' : 'the fewest people-hours, since prices are missing,'} was sought
            and is met within {figure(100 * plan.plan.gap, 1)} %{plan.plan.stoppedByTime && ' in the time given'}.
          </p>
          {plan.plan.moved.length > 0 && (
            <details open>
              <summary>Moved against the plan before ({plan.plan.moved.length})</summary>
              <ul>
                {plan.plan.moved.map((move) => (
                  <li key={`${move.zone}-${move.job}`}>
                    {move.zone} {move.job}: {momentWords(move.from)} to {momentWords(move.to)}
                  </li>
                ))}
              </ul>
            </details>
          )}
          {plan.plan.cautions.length > 0 && (
            <ul>
              {plan.plan.cautions.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          )}
        </>
      )}
      <p className="caution">
        {cautions.chemicals} {cautions.surface}
      </p>
    </section>
  );
};
