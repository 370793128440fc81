import type { Booking, Traffic } from '#shared/vocabulary/booking.ts';
import { Choice, EntryTable, NumberField, Part, RemoveButton, TimeField } from '../../components/fields.tsx';
import { spanOf } from '../../desk/booking-shapes.ts';
import { useDesk } from '../../desk/desk.ts';
import { edit } from '../../desk/editing.ts';

/** Which machine crosses which zone, how often, and whether it turns there. */
export const Machines = ({ booking }: { booking: Booking }) => {
  const { vehicles, zone: chosen } = useDesk();
  const zones = booking.zones.map((zone) => [zone.letter, `${zone.letter} ${zone.name}`] as const);
  const classes = vehicles.map((vehicle) => [vehicle.id, vehicle.name] as const);
  const set = (index: number, changed: Partial<Traffic>): void =>
    edit({ ...booking, traffic: booking.traffic.map((pass, at) => (at === index ? { ...pass, ...changed } : pass)) });
  const add = (): void => {
    const zone = booking.zones.find((one) => one.letter === chosen) ?? booking.zones[0];
    const span = spanOf(booking);
    const vehicle = vehicles.find((one) => one.id === 'forklift-small') ?? vehicles[0];
    if (!zone || !span || !vehicle) return;
    edit({
      ...booking,
      traffic: [...booking.traffic, { zone: zone.letter, vehicle: vehicle.id, at: span.first, passes: 20, turning: false }],
    });
  };
  return (
    <Part title="Machines">
      {booking.traffic.length > 0 && (
        <EntryTable
          caption="Passes over the zone, there and back counted apart"
          heads={['Zone and machine', 'At', 'Passes', 'Turns']}
          end="Remove"
        >
          {booking.traffic.map((pass, index) => (
            <tr key={index}>
              <td>
                <div className="pair">
                  <Choice
                    label={`Zone of machine ${index + 1}`}
                    value={pass.zone}
                    words={zones}
                    change={(zone) => set(index, { zone })}
                  />
                  <Choice
                    label={`Machine ${index + 1}`}
                    value={pass.vehicle}
                    words={classes}
                    change={(vehicle) => set(index, { vehicle })}
                  />
                </div>
              </td>
              <td>
                <TimeField label={`Machine ${index + 1} at`} value={pass.at} change={(at) => set(index, { at })} />
              </td>
              <td>
                <NumberField
                  label={`Passes of machine ${index + 1}`}
                  value={pass.passes}
                  low={1}
                  high={5000}
                  step={1}
                  change={(passes) => set(index, { passes: Math.round(passes) })}
                />
              </td>
              <td>
                <input
                  type="checkbox"
                  aria-label={`Machine ${index + 1} turns there`}
                  checked={pass.turning}
                  onChange={(event) => set(index, { turning: event.target.checked })}
                />
              </td>
              <td>
                <RemoveButton
                  label={`Remove machine ${index + 1}`}
                  remove={() => edit({ ...booking, traffic: booking.traffic.filter((_, at) => at !== index) })}
                />
              </td>
            </tr>
          ))}
        </EntryTable>
      )}
      <button type="button" disabled={booking.zones.length === 0} onClick={add}>
        Add a machine
      </button>
      <p className="caution">
        Whether ground or floor carries a machine is for the supplier’s sheet and the responsible engineer.
      </p>
    </Part>
  );
};
