import type { PlanRun } from '#shared/contract/contract.ts';
import { figure, show as inUnits, showMoney } from '#shared/units/quantity.ts';
import { spanWords } from '#shared/wording/moments.ts';
import { momentWords } from '../../desk/moments.ts';
import { Part } from '../../components/fields.tsx';
import { Figure } from '../../components/figure.tsx';
import { percent } from '../../components/numbers.ts';
import { Reserves } from './reserves.tsx';
import { useDesk } from '../../desk/desk.ts';
import { weighSod } from '../../desk/recovering.ts';

/** The sod orders of the plan: how much, from whom, by when, truck by truck; and the farms side by side. */
export const SodOrders = ({ plan }: { plan: PlanRun }) => {
  const { venue, units, sod, job } = useDesk();
  if (!venue) return null;
  const farmName = (id: string | null): string => venue.farms.find((farm) => farm.id === id)?.name ?? id ?? 'without sod';
  const money = (value: number | null): string => (value === null ? 'no price' : showMoney(value, venue.rules.currency));
  if (plan.plan.orders.length === 0)
    return (
      <Part title="Sod">
        <p>No sod is needed in this plan.</p>
      </Part>
    );
  return (
    <Part title="Sod">
      {plan.plan.orders.map((order) => (
        <div key={`${order.farm}-${order.cut}-${order.releaseBy}`} className="order">
          <p>
            <strong>
              Release by <Figure kind="release" text={momentWords(order.releaseBy)} />
            </strong>{' '}
            ({order.slack >= 0 ? `${spanWords(order.slack)} from now` : `${spanWords(-order.slack)} ago`}) to{' '}
            {farmName(order.farm)}: {order.cut} cut, {inUnits(order.area, 'area', units)} to lie in zones {order.zones.join(', ')}
            , {inUnits(order.ordered, 'area', units)} with waste, {order.rolls} rolls, {inUnits(order.weight, 'mass', units)},{' '}
            {order.trucks.length} truckloads. Sod {money(order.price)}, freight {money(order.freight)}; called off after the
            release {money(order.cancelFee)}.
          </p>
          <details>
            <summary>Every term of the release</summary>
            <table>
              <thead>
                <tr>
                  <th scope="col">Term</th>
                  <th scope="col">Hours</th>
                  <th scope="col">Brings us to</th>
                </tr>
              </thead>
              <tbody>
                {order.terms.map((term, index) => (
                  <tr key={index}>
                    <th scope="row">{term.name}</th>
                    <td>{figure(term.hours, 1)} h</td>
                    <td>{momentWords(term.at)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </details>
          <details>
            <summary>Truck by truck</summary>
            <table>
              <thead>
                <tr>
                  <th scope="col">Truck</th>
                  <th scope="col">Arrives</th>
                  <th scope="col">Down</th>
                  <th scope="col">Rolls</th>
                  <th scope="col">Turf</th>
                  <th scope="col">In the roll</th>
                  <th scope="col">Zones</th>
                </tr>
              </thead>
              <tbody>
                {order.trucks.map((truck) => (
                  <tr key={truck.number}>
                    <th scope="row">{truck.number}</th>
                    <td>{momentWords(truck.arrive)}</td>
                    <td>{momentWords(truck.down)}</td>
                    <td>{truck.rolls}</td>
                    <td>{inUnits(truck.area, 'area', units)}</td>
                    <td>{figure(truck.hoursInRoll, 0)} h</td>
                    <td>{truck.zones.join(' ')}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </details>
        </div>
      ))}
      <button type="button" disabled={job !== null} onClick={() => void weighSod()}>
        Lay the farms side by side
      </button>
      {sod && (
        <table>
          <caption>
            The recovery with the sod of one farm alone. The members would order {inUnits(sod.need.p10, 'area', units)} to{' '}
            {inUnits(sod.need.p90, 'area', units)}, in the middle {inUnits(sod.need.p50, 'area', units)}.
          </caption>
          <thead>
            <tr>
              <th scope="col">Farm</th>
              <th scope="col">Cost</th>
              <th scope="col">Ordered</th>
              <th scope="col">Trucks</th>
              <th scope="col">Release by</th>
              <th scope="col">Least likely zone</th>
            </tr>
          </thead>
          <tbody>
            {sod.farms.map((one) => (
              <tr key={one.farm ?? 'none'}>
                <th scope="row">{farmName(one.farm)}</th>
                {one.plan ? (
                  <>
                    <td>{money(one.plan.total)}</td>
                    <td>{inUnits(one.plan.ordered, 'area', units)}</td>
                    <td>{one.plan.trucks}</td>
                    <td>{one.plan.releaseBy ? momentWords(one.plan.releaseBy) : '–'}</td>
                    <td>{percent(one.plan.leastChance)}</td>
                  </>
                ) : (
                  <td colSpan={5}>{one.reason}</td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {sod && <Reserves sod={sod} />}
    </Part>
  );
};
