import { show as inUnits } from '#shared/units/quantity.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import { percent } from '../plan/zone-table.tsx';
import { compareFloors, edit, floored, floorZones, useDesk } from '../sheet/desk.ts';

/** Live cover on the home date over the zones whose floor is chosen, weighted by their turf. */
const floorCover = (forecast: Forecast, letters: ReadonlySet<string>): { cover: number; worst: string } => {
  const zones = forecast.zones.filter((zone) => letters.has(zone.letter));
  const area = zones.reduce((sum, zone) => sum + zone.area, 0);
  const worst = zones.toSorted((a, b) => a.coverHome.p50 - b.coverHome.p50)[0];
  return {
    cover: zones.reduce((sum, zone) => sum + zone.coverHome.p50 * zone.area, 0) / Math.max(1, area),
    worst: worst ? `${worst.letter} ${percent(worst.coverHome.p50)}` : '–',
  };
};

/** Floors side by side: the same usual season, price, lay hours, trucks, consequence. */
export const Compare = () => {
  const { booking, trials, units } = useDesk();
  if (!booking) return <p className="empty">Choose a booking first.</p>;
  const letters = floorZones(booking);
  return (
    <section aria-labelledby="compare">
      <h2 id="compare">Compare</h2>
      <p>Every floor on zones {[...letters].join(', ')}; the other zones keep theirs. The same usual season for all.</p>
      <button type="button" className="main" onClick={() => void compareFloors()}>
        Try every floor
      </button>
      {trials.length > 0 && (
        <div className="scroll">
          <table className="trials">
            <caption>Floors compared on the home date, nothing done</caption>
            <thead>
              <tr>
                <th scope="col">Floor</th>
                <th scope="col">Cover</th>
                <th scope="col">Worst</th>
                <th scope="col">Not ready</th>
                <th scope="col">Trucks</th>
                <th scope="col">Lay, person-h</th>
                <th scope="col">Hire</th>
                <th scope="col">
                  <span className="for-readers">Choose</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {trials.map(({ covering, forecast }) => {
                const area =
                  forecast?.zones.filter((zone) => letters.has(zone.letter)).reduce((sum, zone) => sum + zone.area, 0) ?? 0;
                const outcome = forecast && floorCover(forecast, letters);
                return (
                  <tr key={covering.id}>
                    <th scope="row">{covering.name}</th>
                    <td>{outcome ? percent(outcome.cover) : '…'}</td>
                    <td>{outcome?.worst ?? '…'}</td>
                    <td>{forecast ? inUnits(forecast.replaceArea.p50, 'area', units) : '…'}</td>
                    <td>{forecast ? Math.ceil(area / covering.perTruck) : '…'}</td>
                    <td>{forecast ? Math.round(area / covering.layingRate) : '…'}</td>
                    <td>{covering.hirePrice === null ? 'no price' : Math.round(covering.hirePrice * area)}</td>
                    <td>
                      <button
                        type="button"
                        onClick={() => edit(floored(booking, covering.id))}
                        aria-label={`Take ${covering.name}`}
                      >
                        take
                      </button>
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </div>
      )}
      <p className="caution">
        Whether a floor carries the vehicles planned on it is for its supplier’s sheet and the responsible engineer.
      </p>
    </section>
  );
};
