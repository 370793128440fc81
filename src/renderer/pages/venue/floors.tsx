import { figure, show as inUnits } from '#shared/units/quantity.ts';
import { Part } from '../../components/fields.tsx';
import { percent } from '../../components/numbers.ts';
import { useDesk } from '../../desk/desk.ts';
import { HatchSwatch } from '../../drawings/hatches.tsx';

/** The classes of covering, with what each passes and how far its figures can be leaned on. */
export const Floors = () => {
  const { coverings, units } = useDesk();
  return (
    <Part title="Classes of floor">
      <div className="scroll">
        <table>
          <caption>Classes, not products; a supplier’s own sheet goes before them</caption>
          <thead>
            <tr>
              <th scope="col">Class</th>
              <th scope="col">Light</th>
              <th scope="col">Seal</th>
              <th scope="col">Rain through</th>
              <th scope="col">Wear through</th>
              <th scope="col">Wheel to</th>
              <th scope="col">Lay, a person-h</th>
              <th scope="col">Standing</th>
            </tr>
          </thead>
          <tbody>
            {coverings.map((covering) => (
              <tr key={covering.id}>
                <th scope="row">
                  <HatchSwatch covering={covering.id} /> {covering.name}
                </th>
                <td>{percent(covering.lightTransmission)}</td>
                <td>{percent(covering.seal)}</td>
                <td>{percent(covering.rainThrough)}</td>
                <td>{percent(covering.wearThrough)}</td>
                <td>{covering.wheelRating === 0 ? 'feet only' : `${figure(covering.wheelRating, 0)} kN`}</td>
                <td>{inUnits(covering.layingRate, 'area', units)}</td>
                <td>{covering.standing}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </Part>
  );
};
