import type { PlanRun } from '#shared/contract/contract.ts';
import { showMoney } from '#shared/units/quantity.ts';
import { costWords, isPlanCost } from '#shared/vocabulary/money.ts';
import { costAmount } from '#shared/wording/amounts.ts';
import { Part } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';

/** The lines of cost, and what a kind and a hard season would make of them. */
export const Cost = ({ plan }: { plan: PlanRun }) => {
  const { venue, estimate, units } = useDesk();
  if (!venue) return null;
  const { lines, total, unpriced } = plan.plan.cost;
  const { currency } = venue.rules;
  const money = (value: number): string => showMoney(value, currency);
  return (
    <Part title="Cost">
      <table className="sums">
        <thead>
          <tr>
            <th scope="col">For</th>
            <th scope="col">Quantity</th>
            <th scope="col">Sum</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line, index) => (
            <tr key={index}>
              <th scope="row">
                {isPlanCost(line.kind) ? costWords[line.kind] : line.kind}
                {line.note && <span className="caution"> {line.note}</span>}
              </th>
              <td>{costAmount(line.quantity, line.unit, units)}</td>
              <td>{line.sum === null ? 'no price is entered' : money(line.sum)}</td>
            </tr>
          ))}
          <tr>
            <th scope="row">Together{unpriced.length > 0 && ` (without ${unpriced.join(', ')})`}</th>
            <td />
            <td>
              <strong>{money(total)}</strong>
            </td>
          </tr>
        </tbody>
      </table>
      {estimate && (
        <table className="sums">
          <caption>What it comes to in a kind, a usual and a hard season, and who bears it by the terms agreed</caption>
          <thead>
            <tr>
              <th scope="col">Season</th>
              <th scope="col">Kind</th>
              <th scope="col">Usual</th>
              <th scope="col">Hard</th>
            </tr>
          </thead>
          <tbody>
            {(
              [
                ['All', estimate.total],
                ['Payer', estimate.payer],
                ['Venue', estimate.venue],
              ] as const
            ).map(([label, sums]) => (
              <tr key={label}>
                <th scope="row">{label}</th>
                <td>{money(sums.low)}</td>
                <td>{money(sums.likely)}</td>
                <td>{money(sums.high)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </Part>
  );
};
