import { CartesianGrid, Line, LineChart, ReferenceDot, ResponsiveContainer, Tooltip, XAxis, YAxis } from 'recharts';
import { figure, minorDigits, show as inUnits, showMoney, toShown, unitOf } from '#shared/units/quantity.ts';
import type { SodDecision, SodReserve } from '#shared/vocabulary/sod.ts';
import { tickLook } from '../../components/chart-look.ts';
import { percent } from '../../components/numbers.ts';
import { useDesk } from '../../desk/desk.ts';

/** How much sod to order firmly and how much to hold in reserve, farm by farm and cut by cut. */
export const Reserves = ({ sod }: { sod: SodDecision }) => {
  const { venue, units } = useDesk();
  if (!venue) return null;
  const farmName = (id: string): string => venue.farms.find((farm) => farm.id === id)?.name ?? id;
  const money = (value: number): string => showMoney(value, venue.rules.currency);
  const priced = sod.reserves.filter((one) => one.best !== null);
  const cheapest = priced.toSorted((a, b) => a.best!.expectedCost - b.best!.expectedCost)[0];
  return (
    <>
      <h4>A reserve as an option</h4>
      <table className="reserves">
        <caption>Least expected cost over the members: what is ordered, held, and how likely both fall short</caption>
        <thead>
          <tr>
            <th scope="col">Farm</th>
            <th scope="col">Cut</th>
            <th scope="col">Order</th>
            <th scope="col">Reserve</th>
            <th scope="col">Expected cost</th>
            <th scope="col">Short</th>
          </tr>
        </thead>
        <tbody>
          {sod.reserves.map((one) => (
            <tr key={`${one.farm}-${one.cut}`} className={one === cheapest ? 'chosen' : ''}>
              <th scope="row">{farmName(one.farm)}</th>
              <td>{one.cut}</td>
              {one.best ? (
                <>
                  <td>{inUnits(one.best.ordered, 'area', units)}</td>
                  <td>{inUnits(one.best.reserved, 'area', units)}</td>
                  <td>{money(one.best.expectedCost)}</td>
                  <td>{percent(one.best.chanceShort)}</td>
                </>
              ) : (
                <td colSpan={4}>no price is entered for: {one.missing.join(', ')}</td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
      {cheapest && <ReserveCurve reserve={cheapest} name={farmName(cheapest.farm)} />}
    </>
  );
};

const ReserveCurve = ({ reserve, name }: { reserve: SodReserve; name: string }) => {
  const { venue, units } = useDesk();
  if (reserve.curve.length < 2 || !reserve.best || !venue) return null;
  const area = (value: number): number => Math.round(toShown(value, 'area', units));
  const whole = 10 ** minorDigits(venue.rules.currency);
  const rows = reserve.curve.map((one) => ({ ordered: area(one.ordered), cost: Math.round(one.expectedCost / whole), one }));
  return (
    <figure className="chart">
      <div aria-hidden>
        <ResponsiveContainer width="100%" height={150}>
          <LineChart data={rows} accessibilityLayer={false} margin={{ top: 8, right: 16, bottom: 0, left: 6 }}>
            <CartesianGrid stroke="var(--rule)" vertical={false} />
            <XAxis
              dataKey="ordered"
              type="number"
              domain={['dataMin', 'dataMax']}
              tick={tickLook}
              tickFormatter={(value: number) => figure(value, 0)}
              stroke="currentColor"
            />
            <YAxis tick={tickLook} tickFormatter={(value: number) => figure(value, 0)} stroke="currentColor" />
            <Tooltip isAnimationActive={false} />
            <Line
              dataKey="cost"
              name={`expected cost, ${venue.rules.currency}`}
              stroke="var(--ink)"
              dot={false}
              isAnimationActive={false}
            />
            <ReferenceDot
              x={area(reserve.best.ordered)}
              y={Math.round(reserve.best.expectedCost / whole)}
              r={4}
              fill="var(--accent)"
              stroke="none"
            />
          </LineChart>
        </ResponsiveContainer>
      </div>
      <figcaption>
        {name}, {reserve.cut} cut: expected cost against what is ordered firmly ({unitOf('area', units)}), each with its best
        reserve. The dot is the least; a flat bottom means that ordering somewhat more costs little.
      </figcaption>
      <details>
        <summary>The same as a table</summary>
        <table>
          <thead>
            <tr>
              <th scope="col">Order</th>
              <th scope="col">Reserve</th>
              <th scope="col">Expected cost</th>
              <th scope="col">Short</th>
            </tr>
          </thead>
          <tbody>
            {reserve.curve.map((one) => (
              <tr key={one.ordered}>
                <td>{inUnits(one.ordered, 'area', units)}</td>
                <td>{inUnits(one.reserved, 'area', units)}</td>
                <td>{showMoney(one.expectedCost, venue.rules.currency)}</td>
                <td>{percent(one.chanceShort)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </figure>
  );
};
