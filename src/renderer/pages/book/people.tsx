import type { Booking, Crowd } from '#shared/vocabulary/booking.ts';
import { activityWords } from '#shared/wording/words.ts';
import { Choice, EntryTable, NumberField, Part, RemoveButton, TimeField } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';
import { edit } from '../../desk/editing.ts';

/** Who is on which zone, how close and doing what. */
export const People = ({ booking }: { booking: Booking }) => {
  const { zone: chosen } = useDesk();
  const zones = booking.zones.map((zone) => [zone.letter, `${zone.letter} ${zone.name}`] as const);
  const set = (index: number, changed: Partial<Crowd>): void =>
    edit({ ...booking, crowds: booking.crowds.map((crowd, at) => (at === index ? { ...crowd, ...changed } : crowd)) });
  const add = (): void => {
    const layer = booking.layers.find((one) => one.zone === chosen) ?? booking.layers[0];
    if (!layer) return;
    const crowd: Crowd = { zone: layer.zone, from: layer.on, until: layer.off, density: 0.5, activity: 'walking' };
    edit({ ...booking, crowds: [...booking.crowds, crowd] });
  };
  return (
    <Part title="People">
      {booking.crowds.length > 0 && (
        <EntryTable
          caption="Density in people per m²; 0.5 m² a person is 2"
          heads={['Zone', 'From and until', 'Per m²', 'Doing']}
          end="Remove"
        >
          {booking.crowds.map((crowd, index) => (
            <tr key={index}>
              <td>
                <Choice
                  label={`Zone of people ${index + 1}`}
                  value={crowd.zone}
                  words={zones}
                  change={(zone) => set(index, { zone })}
                />
              </td>
              <td>
                <div className="pair">
                  <TimeField label={`People ${index + 1} from`} value={crowd.from} change={(from) => set(index, { from })} />
                  <TimeField label={`People ${index + 1} until`} value={crowd.until} change={(until) => set(index, { until })} />
                </div>
              </td>
              <td>
                <NumberField
                  label={`People per m² ${index + 1}`}
                  value={crowd.density}
                  low={0}
                  high={6}
                  step={0.1}
                  change={(density) => set(index, { density })}
                />
              </td>
              <td>
                <Choice
                  label={`What people ${index + 1} do`}
                  value={crowd.activity}
                  words={activityWords}
                  change={(activity) => set(index, { activity })}
                />
              </td>
              <td>
                <RemoveButton
                  label={`Remove people ${index + 1}`}
                  remove={() => edit({ ...booking, crowds: booking.crowds.filter((_, at) => at !== index) })}
                />
              </td>
            </tr>
          ))}
        </EntryTable>
      )}
      <button type="button" disabled={booking.layers.length === 0} onClick={add}>
        Add people
      </button>
    </Part>
  );
};
