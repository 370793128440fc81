import { figure, show as inUnits, showMoney } from '#shared/units/quantity.ts';
import { jobWords, programmeWords } from '#shared/wording/words.ts';
import { paperKinds, type PaperKind } from '#shared/contract/contract.ts';
import { percent } from '../plan/zone-table.tsx';
import { makePlan, writePaper, useDesk } from '../sheet/desk.ts';

const when = (time: string): string => time.slice(5).replace('T', ' ');
const paperWords: Partial<Record<PaperKind, string>> = {
  'recovery-report': 'Recovery report',
  calendar: 'Calendar',
  'zone-table': 'Zones as CSV',
  'job-table': 'Jobs as CSV',
  'sod-table': 'Trucks as CSV',
};

/** The recovery: ways back, jobs, the sod order with every term of its release, cost, papers. */
export const Recover = () => {
  const { plan, venue, units, job, run } = useDesk();
  return (
    <section aria-labelledby="recover">
      <h2 id="recover">Recover</h2>
      <button type="button" className="main" disabled={job !== null} onClick={() => void makePlan()}>
        {plan ? 'Plan again' : run ? 'Plan the recovery' : 'Foresee and plan'}
      </button>
      {!plan && (
        <p className="empty">
          The plan says which zones are left, mended or resodded, when the crew does what, and by when the sod is released.
        </p>
      )}
      {plan && venue && (
        <>
          <table>
            <caption>Ways back</caption>
            <thead>
              <tr>
                <th scope="col">Zone</th>
                <th scope="col">Way back</th>
                <th scope="col">Ends</th>
                <th scope="col">In hand</th>
                <th scope="col">Ready</th>
              </tr>
            </thead>
            <tbody>
              {plan.plan.zones.map((zone) => (
                <tr key={zone.zone}>
                  <th scope="row">{zone.zone}</th>
                  <td>{programmeWords[zone.programme]}</td>
                  <td>{zone.finish ? when(zone.finish) : '–'}</td>
                  <td>{zone.finish ? `${Math.floor(zone.slack)} h` : '–'}</td>
                  <td>{percent(zone.chanceReady)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          {plan.plan.orders.map((order) => (
            <div key={`${order.farm}-${order.cut}`} className="order">
              <p>
                <strong>Release by {when(order.releaseBy)}</strong> to {venue.farms.find((farm) => farm.id === order.farm)?.name}:{' '}
                {order.cut} cut, {inUnits(order.area, 'area', units)} to lie, {inUnits(order.ordered, 'area', units)} with waste,{' '}
                {order.rolls} rolls, {order.trucks.length} truckloads.
              </p>
              <details>
                <summary>Every term of the release</summary>
                <table>
                  <tbody>
                    {order.terms.map((term) => (
                      <tr key={term.name}>
                        <th scope="row">{term.name}</th>
                        <td>{figure(term.hours, 1)} h</td>
                        <td>{when(term.at)}</td>
                      </tr>
                    ))}
                  </tbody>
                </table>
              </details>
            </div>
          ))}
          <details>
            <summary>Jobs ({plan.plan.zones.reduce((sum, zone) => sum + zone.jobs.length, plan.plan.fieldJobs.length)})</summary>
            <table>
              <tbody>
                {[...plan.plan.zones.flatMap((zone) => zone.jobs), ...plan.plan.fieldJobs]
                  .toSorted((a, b) => (a.start < b.start ? -1 : 1))
                  .map((one, index) => (
                    <tr key={index}>
                      <th scope="row">{one.zone ?? 'field'}</th>
                      <td>{jobWords[one.job]}</td>
                      <td>{when(one.start)}</td>
                      <td>{when(one.end)}</td>
                      <td>{one.crew > 0 ? `${one.crew} people` : '–'}</td>
                    </tr>
                  ))}
              </tbody>
            </table>
          </details>
          <p>
            Cost {showMoney(plan.plan.cost.total, venue.rules.currency)}
            {plan.plan.cost.unpriced.length > 0 && ` without ${plan.plan.cost.unpriced.join(', ')}: no price is entered`}; within{' '}
            {figure(100 * plan.plan.gap, 1)} % of the least that is possible.
          </p>
          <div className="row" role="group" aria-label="Papers">
            {paperKinds
              .filter((kind) => paperWords[kind] !== undefined)
              .map((kind) => (
                <button key={kind} type="button" onClick={() => void writePaper(kind)}>
                  {paperWords[kind]}
                </button>
              ))}
          </div>
        </>
      )}
      <p className="caution">
        Pesticides and feeds: the label and a licensed applicator. Readiness is decided by measured tests and the competition’s
        own rules.
      </p>
    </section>
  );
};
