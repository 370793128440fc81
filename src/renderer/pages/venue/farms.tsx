import { show as inUnits, showMoney } from '#shared/units/quantity.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { grassWords } from '#shared/wording/words.ts';
import { Part } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';

/** The farms a release can go to, and their terms. */
export const Farms = ({ venue }: { venue: Venue }) => {
  const { units } = useDesk();
  const money = (value: number | null): string => (value === null ? 'no price' : showMoney(value, venue.rules.currency));
  return (
    <Part title="Farms">
      {venue.farms.length === 0 && <p className="empty">Without a farm nothing can be resodded in a plan.</p>}
      <div className="scroll">
        <table>
          <caption>Standing: what each farm quoted, as entered for this venue</caption>
          <thead>
            <tr>
              <th scope="col">Farm</th>
              <th scope="col">Grass</th>
              <th scope="col">Notice, haul</th>
              <th scope="col">A day</th>
              <th scope="col">Open</th>
              <th scope="col">Thick cut, a m²</th>
              <th scope="col">A truck</th>
            </tr>
          </thead>
          <tbody>
            {venue.farms.map((farm) => (
              <tr key={farm.id}>
                <th scope="row">{farm.name}</th>
                <td>
                  {grassWords[farm.grass]}, {Math.round(100 * farm.sandShare)} % sand
                </td>
                <td>
                  {farm.notice} h, {farm.haul} h
                </td>
                <td>
                  {inUnits(farm.harvestPerDay, 'area', units)}, {farm.trucksPerDay} trucks
                </td>
                <td>{inUnits(farm.stock, 'area', units)}</td>
                <td>{money(farm.thickPrice)}</td>
                <td>{money(farm.truckPrice)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </Part>
  );
};
