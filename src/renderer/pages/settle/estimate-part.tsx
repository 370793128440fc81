import { figure } from '#shared/units/quantity.ts';
import { cases, costWords, exactMoney } from '#shared/vocabulary/money.ts';
import { unitAmount } from '#shared/wording/amounts.ts';
import { basisWords } from '#shared/wording/estimates.ts';
import { Part } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';
import { useSettling } from '../../desk/settling.ts';

/** What the plan comes to in a kind, a usual and a hard season, line by line, and who bears it by the terms. */
export const EstimatePart = () => {
  const { estimate } = useSettling();
  const { units } = useDesk();
  if (!estimate)
    return (
      <Part title="Estimate">
        <p className="empty">No plan is kept for this event yet: plan the recovery first, under “recover”.</p>
      </Part>
    );
  const { lines, currency } = estimate;
  const exact = (value: number): string => exactMoney(value, currency).slice(4);
  return (
    <Part title="Estimate">
      <div className="scroll">
        <table className="estimate">
          <caption>
            Of plan {estimate.planId.slice(0, 13)}, {currency}
          </caption>
          <thead>
            <tr>
              <th scope="col">For</th>
              <th scope="col">Likely quantity</th>
              <th scope="col">Price, from</th>
              <th scope="col">Low</th>
              <th scope="col">Likely</th>
              <th scope="col">High</th>
              <th scope="col">Charged by</th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line, index) => (
              <tr key={index}>
                <th scope="row">{line.words === costWords[line.kind] ? line.words : `${costWords[line.kind]}: ${line.words}`}</th>
                <td>{unitAmount(figure(line.quantity.likely, line.unit === 'truck' ? 0 : 1), line.unit)}</td>
                <td className="words">
                  {line.price === null ? '' : `${exact(line.price)}, `}
                  {line.origin}
                </td>
                {cases.map((one) => (
                  <td key={one} className="sum">
                    {line.sum === null ? 'no price' : exact(line.sum[one])}
                  </td>
                ))}
                <td>{line.clause === null ? 'nobody' : `${line.clause}, ${line.chargedShare} %`}</td>
              </tr>
            ))}
            {(
              [
                ['Together', estimate.total],
                ['Borne by the payer', estimate.payer],
                ['Borne by the venue', estimate.venue],
              ] as const
            ).map(([words, sums]) => (
              <tr key={words} className="chosen">
                <th scope="row">{words}</th>
                <td />
                <td />
                {cases.map((one) => (
                  <td key={one} className="sum">
                    {exact(sums[one])}
                  </td>
                ))}
                <td />
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="caution">
        {estimate.unpriced.length > 0 && `Without ${estimate.unpriced.join(', ')}: no price is entered. `}
        {basisWords(estimate, units)}
      </p>
    </Part>
  );
};
