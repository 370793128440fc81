import type { PlanRun } from '#shared/contract/contract.ts';
import { show as inUnits } from '#shared/units/quantity.ts';
import { amountLines, wateringLines } from '#shared/wording/amounts.ts';
import { Part } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';
import { momentWords } from '../../desk/moments.ts';

/** What the work comes to: sand, seed, nitrogen and the water of young sod; nothing for plans kept before it was reckoned. */
export const Quantities = ({ plan: { plan } }: { plan: PlanRun }) => {
  const { units } = useDesk();
  const { works } = plan;
  if (works === undefined || works.quantities.length + works.waterings.length === 0) return null;
  return (
    <Part title="Quantities">
      <table className="quantities">
        <caption>Sand in the holes and on top, seed by what comes up, nitrogen within its cap, water less the usual rain</caption>
        <thead>
          <tr>
            <th scope="col">Zone</th>
            <th scope="col">What the work comes to</th>
          </tr>
        </thead>
        <tbody>
          {amountLines(works, units).map(({ zone, window, words }) => (
            <tr key={`${zone} ${window}`}>
              <th scope="row">{zone}</th>
              <td>{words}</td>
            </tr>
          ))}
          {wateringLines(works).map(({ zone, window, count, volume, first, last }) => (
            <tr key={`${zone} ${window} water`}>
              <th scope="row">{zone}</th>
              <td>
                {count} waterings of the new sod from {momentWords(first)} to {momentWords(last)},{' '}
                {inUnits(volume, 'water', units)} in all
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {works.cautions.map((line) => (
        <p className="caution" key={line}>
          {line}
        </p>
      ))}
    </Part>
  );
};
